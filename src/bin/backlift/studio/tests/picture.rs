//! The panels drawn without a graphics card, to be looked at: pictures are written into the folder that
//! BACKLIFT_PICTURES names.

use std::collections::HashMap;
use std::path::Path;
use std::time::Instant;

use egui::epaint::{Primitive, Vertex};
use egui::{Context, FullOutput, Pos2, RawInput, Rect, TextureId};
use resvg::tiny_skia::{Pixmap, PremultipliedColorU8};

use super::{demo, searched_demo, settle};
use crate::studio::action::{Action, View};
use crate::studio::layout::show;
use crate::studio::panels::{Row, VIEWS};
use crate::studio::state::Studio;

/// A screen in memory.
pub struct Screen {
    ctx: Context,
    size: [u32; 2],
    textures: HashMap<TextureId, egui::ColorImage>,
}

impl Screen {
    pub fn new(size: [u32; 2]) -> Self {
        Self { ctx: Context::default(), size, textures: HashMap::new() }
    }

    pub fn frame(&mut self, it: &mut Studio) -> FullOutput {
        let size = egui::vec2(self.size[0] as f32, self.size[1] as f32);
        let screen_rect = Some(Rect::from_min_size(Pos2::ZERO, size));
        let input = RawInput { screen_rect, ..Default::default() };
        let mut output = self.ctx.run_ui(input, |ui| {
            show(ui, it);
        });
        let deltas = output.textures_delta.set.iter();
        for (id, delta) in deltas.flat_map(|(id, all)| all.iter().map(move |it| (id, it))) {
            let egui::ImageData::Color(image) = &delta.image;
            match delta.pos {
                None => {
                    self.textures.insert(*id, (**image).clone());
                }
                Some([x, y]) => {
                    let whole = self.textures.get_mut(id).unwrap();
                    for row in 0..image.height() {
                        for column in 0..image.width() {
                            whole[(x + column, y + row)] = image[(column, row)];
                        }
                    }
                }
            }
        }
        output.textures_delta.clear();
        output
    }

    pub fn drawn(&self, output: FullOutput) -> Pixmap {
        let mut map = Pixmap::new(self.size[0], self.size[1]).unwrap();
        for clipped in self.ctx.tessellate(output.shapes, output.pixels_per_point) {
            let Primitive::Mesh(mesh) = clipped.primitive else { continue };
            let Some(texture) = self.textures.get(&mesh.texture_id) else { continue };
            for corners in mesh.indices.chunks(3) {
                let [a, b, c] = [0, 1, 2].map(|k| mesh.vertices[corners[k] as usize]);
                triangle(&mut map, texture, clipped.clip_rect, [a, b, c]);
            }
        }
        map
    }
}

fn triangle(map: &mut Pixmap, texture: &egui::ColorImage, clip: Rect, [a, b, c]: [Vertex; 3]) {
    let cross = |o: Pos2, p: Pos2, q: Pos2| (p.x - o.x) * (q.y - o.y) - (p.y - o.y) * (q.x - o.x);
    let area = cross(a.pos, b.pos, c.pos);
    if area == 0.0 {
        return;
    }
    let bounds = Rect::from_points(&[a.pos, b.pos, c.pos]).intersect(clip);
    let screen =
        Rect::from_min_size(Pos2::ZERO, egui::vec2(map.width() as f32, map.height() as f32));
    let bounds = bounds.intersect(screen);
    let width = map.width() as usize;
    for y in bounds.top().floor().max(0.0) as usize..bounds.bottom().ceil().max(0.0) as usize {
        for x in bounds.left().floor().max(0.0) as usize..bounds.right().ceil().max(0.0) as usize {
            let at = Pos2::new(x as f32 + 0.5, y as f32 + 0.5);
            let share = [
                cross(at, b.pos, c.pos) / area,
                cross(at, c.pos, a.pos) / area,
                cross(at, a.pos, b.pos) / area,
            ];
            if !clip.contains(at) || share.iter().any(|it| *it < 0.0) || x >= width {
                continue;
            }
            let mix = |of: &dyn Fn(&Vertex) -> f32| {
                share[0] * of(&a) + share[1] * of(&b) + share[2] * of(&c)
            };
            let u = mix(&|it| it.uv.x) * texture.width() as f32;
            let v = mix(&|it| it.uv.y) * texture.height() as f32;
            let texel = texture
                [((u as usize).min(texture.width() - 1), (v as usize).min(texture.height() - 1))];
            let channel = |k: usize| {
                mix(&|it| f32::from(it.color.to_array()[k])) * f32::from(texel.to_array()[k])
                    / 255.0
            };
            let alpha = channel(3);
            let Some(pixel) = map.pixels_mut().get_mut(y * width + x) else { continue };
            let under = [pixel.red(), pixel.green(), pixel.blue(), pixel.alpha()];
            let over = |k: usize| channel(k) + f32::from(under[k]) * (1.0 - alpha / 255.0);
            let full = over(3).min(255.0) as u8;
            let limited = |k: usize| (over(k) as u8).min(full);
            *pixel =
                PremultipliedColorU8::from_rgba(limited(0), limited(1), limited(2), full).unwrap();
        }
    }
}

fn shot(it: &mut Studio, size: [u32; 2], name: &str) {
    let mut screen = Screen::new(size);
    screen.frame(it);
    screen.frame(it);
    let started = Instant::now();
    let output = screen.frame(it);
    let took_ms = 1e3 * started.elapsed().as_secs_f64();
    eprintln!("{name}: {took_ms:.2} ms for the panels");
    if let Some(folder) = std::env::var_os("BACKLIFT_PICTURES") {
        screen.drawn(output).save_png(Path::new(&folder).join(format!("{name}.png"))).unwrap();
    }
}

#[test]
fn every_view_draws_at_every_size_and_text_scale() {
    let mut it = demo();
    if std::env::var_os("BACKLIFT_PICTURES").is_some() {
        it = searched_demo();
        it.apply(Action::View(View::Card));
        settle(&mut it);
    }
    it.apply(Action::Try(0.98, 0.50));
    for Row { view, .. } in &VIEWS {
        it.view = *view;
        let name = format!("{view:?}").to_lowercase();
        for (size, scale, dark, kind) in [
            ([1366, 768], 1.0, false, "laptop"),
            ([1920, 1080], 1.0, true, "dark"),
            ([1366, 768], 2.0, false, "large"),
        ] {
            it.apply(Action::TextScale(scale));
            it.apply(Action::Dark(dark));
            shot(&mut it, size, &format!("{name}-{kind}"));
        }
    }
}
