//! The net and the bench in bevy: surfaces made anew when player, bats or look change, and moved every picture to where
//! the state says.

use backlift::frames::DVec3;
use bevy::camera::{ClearColorConfig, RenderTarget};
use bevy::core_pipeline::tonemapping::Tonemapping;
use bevy::image::ImageSampler;
use bevy::light::CascadeShadowConfigBuilder;
use bevy::prelude::*;
use bevy::render::render_resource::TextureFormat;

use super::build::{Build, Piece};
use super::detail::Detail;
use crate::studio::answers;
use crate::studio::look::Look;
use crate::studio::scene::body::Part;
use crate::studio::scene::eye::{Eye, NEAR_M};
use crate::studio::scene::pose::Place;
use crate::studio::scene::wood::Bench;
use crate::studio::scene::{Figure, Scene, Shown};
use crate::studio::state::Studio;

/// Pictures until what was made anew is on the screen.
const SETTLE: u32 = 4;
/// Pixels of the net to a point, across and down, at most: edges are smoothed, and on a screen of 3840×2160 more of
/// them take longer to draw than a picture may.
const MOST_PIXELS: f32 = 1.0;
/// The second bat's arms are drawn a little thinner, so that the two do not flicker through each other.
const THINNER: f32 = 0.95;

/// What was built, and for what.
pub struct Stage {
    /// Where the net is shown, points.
    pub room: egui::Rect,
    /// Pixels to a point.
    pub pixels_per_point: f32,
    /// The image the net is drawn into.
    pub picture: Option<Handle<Image>>,
    size: UVec2,
    built_for: Option<u64>,
    wood: Option<(u64, Handle<Mesh>)>,
    /// Pictures that are still to be drawn for what was made anew.
    to_come: u32,
}

impl Default for Stage {
    fn default() -> Self {
        Self {
            room: egui::Rect::NOTHING,
            pixels_per_point: 1.0,
            picture: None,
            size: UVec2::ZERO,
            built_for: None,
            wood: None,
            to_come: SETTLE,
        }
    }
}

impl Stage {
    /// Something was made anew, and takes some pictures until it is seen.
    pub fn is_new(&mut self) {
        self.to_come = SETTLE;
    }

    /// Whether another picture is to be drawn for what was made anew.
    pub fn settles(&mut self) -> bool {
        self.to_come = self.to_come.saturating_sub(1);
        self.to_come > 0
    }
}

#[derive(Component)]
pub struct NetCamera;

/// The light that throws shadows.
#[derive(Component)]
pub struct Sun;

pub fn set_up(mut commands: Commands) {
    let camera = Camera { order: -1, is_active: false, ..default() };
    commands.spawn((Camera3d::default(), camera, NetCamera, Tonemapping::None, Msaa::Sample4));
    let from = Transform::from_xyz(-1.5, -4.0, 6.0).looking_at(Vec3::ZERO, Vec3::Z);
    let sun = DirectionalLight { illuminance: 2_500.0, shadow_maps_enabled: true, ..default() };
    let shadows =
        CascadeShadowConfigBuilder { num_cascades: 1, maximum_distance: 12.0, ..default() };
    commands.spawn((sun, shadows.build(), from, Sun));
    // The sky, so that what the sun does not see is not black.
    let fill = DirectionalLight { illuminance: 900.0, shadow_maps_enabled: false, ..default() };
    let from = Transform::from_xyz(3.0, 3.0, 1.5).looking_at(Vec3::ZERO, Vec3::Z);
    commands.spawn((fill, from));
    let (color, brightness) = (Color::srgb(0.93, 0.96, 1.0), 380.0);
    commands.insert_resource(GlobalAmbientLight { color, brightness, ..default() });
}

type Moved<'a> = (&'a Piece, &'a mut Transform, &'a mut Visibility);
type Seeing<'a> = (&'a mut Camera, &'a mut Projection, &'a mut Transform, &'a mut Msaa, Entity);

/// Everything to where the state says.
#[expect(clippy::too_many_arguments, reason = "what a system asks of bevy")]
pub fn mirror(
    studio: NonSend<Studio>,
    mut stage: NonSendMut<Stage>,
    possible: Res<Detail>,
    mut commands: Commands,
    mut meshes: ResMut<Assets<Mesh>>,
    mut materials: ResMut<Assets<StandardMaterial>>,
    mut images: ResMut<Assets<Image>>,
    mut pieces: Query<Moved, Without<NetCamera>>,
    built: Query<(Entity, &Piece)>,
    mut sun: Query<&mut DirectionalLight, With<Sun>>,
    camera: Option<Single<Seeing, With<NetCamera>>>,
) {
    let Some(camera) = camera else { return };
    let (mut camera, mut projection, mut from, mut msaa, entity) = camera.into_inner();
    let shown = if stage.room.is_positive() { studio.shown(stage.room) } else { None };
    let Some(shown) = shown else {
        camera.is_active = false;
        return;
    };
    let detail = Detail::of(&studio.look, *possible);
    fit_picture(&mut stage, detail, &mut images, &mut commands, entity);
    let level = if detail.is_full() { Msaa::Sample4 } else { Msaa::Off };
    let mut is_other = msaa.set_if_neq(level);
    for mut it in sun.iter_mut().filter(|it| it.shadow_maps_enabled != detail.is_full()) {
        it.shadow_maps_enabled = detail.is_full();
    }
    let mut build = Build { commands, meshes: &mut meshes, materials: &mut materials };
    match &shown {
        Shown::Bench(_) => {
            if build.wood(&studio, &mut stage.wood) {
                stage.is_new();
            }
        }
        Shown::Net(_) if stage.built_for == Some(key(&studio)) => {}
        Shown::Net(_) => {
            let old = built.iter().filter(|(_, it)| **it != Piece::Wood);
            old.for_each(|(it, _)| build.commands.entity(it).despawn());
            if build.everything(&studio).is_some() {
                stage.built_for = Some(key(&studio));
                stage.is_new();
            }
            // What was built is there in the next picture.
            return;
        }
    }
    camera.clear_color = ClearColorConfig::Custom(sky(&studio.look));
    let before = *from;
    see(shown.eye(), &stage, &mut projection, &mut from);
    is_other |= *from != before;
    for (piece, mut place, mut visible) in &mut pieces {
        let at = match &shown {
            Shown::Net(scene) => placed(scene, *piece),
            Shown::Bench(bench) => (*piece == Piece::Wood).then(|| on_bench(bench)),
        };
        let seen = if at.is_some() { Visibility::Inherited } else { Visibility::Hidden };
        is_other |= visible.set_if_neq(seen);
        is_other |= at.is_some_and(|at| place.set_if_neq(at));
    }
    if is_other {
        stage.is_new();
    }
    // What stands still is not drawn anew: its picture is there.
    camera.is_active = stage.to_come > 0;
}

/// Where a piece is; nowhere if it is not shown.
fn placed(scene: &Scene, piece: Piece) -> Option<Transform> {
    let figure = |slot: usize| scene.figures.iter().find(|it| it.slot == slot);
    match piece {
        Piece::Wood => None,
        Piece::Ground => Some(Transform::IDENTITY),
        Piece::Stumps(slot) => {
            let it = figure(slot).filter(|it| it.slot == 0 || !scene.in_one_place)?;
            Some(Transform::from_translation(narrowed(it.aside_W)))
        }
        Piece::Ball => scene.ball_W.map(|it| Transform::from_translation(narrowed(it))),
        Piece::Tried => {
            let it = figure(1).filter(|it| it.bat.is_none())?;
            Some(transform(it, &it.pose.bat, Vec3::new(1.0, THINNER, THINNER)))
        }
        Piece::Bat(slot) => {
            let thinner = if slot == 1 && scene.in_one_place { THINNER } else { 1.0 };
            let it = figure(slot).filter(|it| it.bat.is_some())?;
            Some(transform(it, &it.pose.bat, Vec3::new(1.0, thinner, thinner)))
        }
        Piece::Body(slot, part) => {
            let it = figure(slot)?;
            let second = slot == 1 && scene.in_one_place;
            if second && !part.is_arm() || part == Part::Head && scene.is_from_the_eyes {
                return None;
            }
            let (_, place) = it.pose.body.iter().find(|(its, _)| *its == part)?;
            let thinner = if second { THINNER } else { 1.0 };
            let long = place.stretch as f32;
            Some(transform(it, place, Vec3::new(thinner, thinner, long)))
        }
    }
}

/// The bat lies on the bench with its toe to the right.
fn on_bench(bench: &Bench<'_>) -> Transform {
    let origin = bench.point_W(DVec3::ZERO);
    let axes = [DVec3::X, DVec3::Y, DVec3::Z].map(|it| bench.point_W(it) - origin);
    Transform { translation: narrowed(origin), rotation: rotation(axes), ..Transform::IDENTITY }
}

fn transform(figure: &Figure, place: &Place, scale: Vec3) -> Transform {
    Transform {
        translation: narrowed(place.position_W + figure.aside_W),
        rotation: rotation([place.R.x_axis, place.R.y_axis, place.R.z_axis]),
        scale,
    }
}

fn narrowed(v: DVec3) -> Vec3 {
    Vec3::new(v.x as f32, v.y as f32, v.z as f32)
}

/// The rotation that has these axes.
fn rotation(axes: [DVec3; 3]) -> Quat {
    let [x, y, z] = axes.map(narrowed);
    Quat::from_mat3(&Mat3::from_cols(x, y, z))
}

fn see(eye: &Eye, stage: &Stage, projection: &mut Projection, from: &mut Transform) {
    let R = eye.R_WC();
    from.translation = narrowed(eye.position_W);
    from.rotation = rotation([R.x_axis, R.y_axis, R.z_axis]);
    *projection = Projection::Perspective(PerspectiveProjection {
        fov: eye.tall_rad as f32,
        near: NEAR_M as f32,
        far: 60.0,
        aspect_ratio: stage.size.x as f32 / stage.size.y.max(1) as f32,
        ..default()
    });
}

/// The image has as many pixels as the room on the screen, fewer where detail is reduced.
fn fit_picture(
    stage: &mut Stage,
    detail: Detail,
    images: &mut Assets<Image>,
    commands: &mut Commands,
    camera: Entity,
) {
    let scale = (stage.pixels_per_point * detail.pixels()).min(MOST_PIXELS);
    let side = |points: f32| ((points * scale).round() as u32).clamp(16, 8192);
    let size = UVec2::new(side(stage.room.width()), side(stage.room.height()));
    if stage.picture.is_some() && size == stage.size {
        return;
    }
    let format = TextureFormat::Rgba8UnormSrgb;
    let mut image = Image::new_target_texture(size.x, size.y, format, None);
    image.sampler = ImageSampler::linear();
    let image = images.add(image);
    commands.entity(camera).insert(RenderTarget::Image(image.clone().into()));
    stage.picture = Some(image);
    stage.size = size;
    stage.is_new();
}

/// What the surfaces hang on: player, bats, look and which bat is a ghost, not the instant.
fn key(studio: &Studio) -> u64 {
    let bats = studio.playback.bats;
    let keys = bats.map(|bat| studio.derived.bat_keys.get(bat));
    let look = (studio.look.dark, studio.look.reduced_detail);
    let ghost = studio.ghost().filter(|_| studio.playback.overlay);
    answers::key(("net", studio.derived.player_key, bats, keys, look, ghost))
}

fn sky(look: &Look) -> Color {
    if look.dark { Color::srgb(0.13, 0.15, 0.17) } else { Color::srgb(0.90, 0.92, 0.92) }
}
