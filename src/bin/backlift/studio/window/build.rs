//! Surfaces of the scene made into what bevy shows.

use backlift::drawing::palette::bat_look;
use bevy::asset::RenderAssetUsages;
use bevy::mesh::{Indices, PrimitiveTopology};
use bevy::prelude::*;

use crate::studio::answers::key;
use crate::studio::scene::body::{Part, parts};
use crate::studio::scene::solid::{Solid, Tone, tone};
use crate::studio::scene::{bat, ground};
use crate::studio::state::Studio;
use crate::studio::style::theme;

/// Corners round a limb, with and without detail.
const AROUND: [usize; 2] = [28, 12];

/// How much is seen of a ghost.
const GHOST: f32 = 0.5;

/// What an entity shows.
#[derive(Component, Clone, Copy, PartialEq)]
pub enum Piece {
    /// Ground and stumps, which stay.
    Ground,
    /// Stumps of a player who stands aside.
    Stumps(usize),
    Ball,
    /// A part of the body with the first or second bat.
    Body(usize, Part),
    /// The first or second bat.
    Bat(usize),
    /// The bat tried on the map; drawn in the first one's shape.
    Tried,
    /// The bat on the maker's bench.
    Wood,
}

/// What surfaces are put into.
pub struct Build<'w, 's, 'a> {
    pub commands: Commands<'w, 's>,
    pub meshes: &'a mut Assets<Mesh>,
    pub materials: &'a mut Assets<StandardMaterial>,
}

impl Build<'_, '_, '_> {
    /// Players, bats, ball, ground and stumps.
    pub fn everything(&mut self, studio: &Studio) -> Option<()> {
        let loaded = studio.derived.loaded.as_ref()?;
        let look = &studio.look;
        let around = AROUND[usize::from(look.reduced_detail)];
        let plain = self.material(Color::WHITE);
        // The ground is most of what is seen, and level: light hardly changes its colour, and takes long to work out.
        let ground = match look.reduced_detail {
            true => self.materials.add(StandardMaterial { unlit: true, ..default() }),
            false => plain.clone(),
        };
        let ghostly = self.material(Color::WHITE.with_alpha(GHOST));
        let ghost = studio.ghost().filter(|_| studio.playback.overlay);
        self.spawn(Piece::Ground, ground::ground(look.dark), &ground);
        self.spawn(Piece::Ball, ground::ball(), &plain);
        let handle_m = loaded.player.comfortable_handle_m();
        for slot in 0..2 {
            self.spawn(Piece::Stumps(slot), ground::stumps(), &plain);
            let n = *studio.playback.bats.get(slot)?;
            let Some(weighed) = loaded.bats.get(n) else { continue };
            let colour = tone(bat_look(theme(look), n).0);
            // A ghost's arms and bat are seen through.
            let swung = if ghost == Some(slot) { &ghostly } else { &plain };
            let shape = bat::shape(weighed, &loaded.laws);
            self.spawn(Piece::Bat(slot), bat::solid(&shape, around, colour), swung);
            if slot == 0 {
                let grey = tone(theme(look).quiet);
                self.spawn(Piece::Tried, bat::solid(&shape, around, grey), &ghostly);
            }
            for (part, solid) in parts(&loaded.player, handle_m, around) {
                let worn = if part.is_arm() { swung } else { &plain };
                self.spawn(Piece::Body(slot, part), solid, worn);
            }
        }
        Some(())
    }

    /// The solid on the bench: one entity, whose surface is put in anew while it is dragged at. Whether it is another.
    pub fn wood(&mut self, studio: &Studio, built: &mut Option<(u64, Handle<Mesh>)>) -> bool {
        let look = &studio.look;
        let key = key(("solid", studio.wood.solid_key(), look.dark, look.reduced_detail));
        if built.as_ref().is_some_and(|it| it.0 == key) {
            return false;
        }
        let around = AROUND[usize::from(look.reduced_detail)];
        let Some(solid) = studio.bench_solid(around) else { return false };
        match built {
            Some((its, handle)) => {
                // A handle of our own is never of an earlier generation.
                let _ = self.meshes.insert(handle.id(), mesh(solid));
                *its = key;
            }
            None => {
                let plain = self.material(Color::WHITE);
                *built = Some((key, self.spawn(Piece::Wood, solid, &plain)));
            }
        }
        true
    }

    fn material(&mut self, base_color: Color) -> Handle<StandardMaterial> {
        self.materials.add(StandardMaterial {
            base_color,
            alpha_mode: if base_color.alpha() < 1.0 { AlphaMode::Blend } else { AlphaMode::Opaque },
            perceptual_roughness: 0.85,
            reflectance: 0.15,
            ..default()
        })
    }

    fn spawn(
        &mut self,
        piece: Piece,
        solid: Solid,
        material: &Handle<StandardMaterial>,
    ) -> Handle<Mesh> {
        let mesh = self.meshes.add(mesh(solid));
        let hidden = (Transform::IDENTITY, Visibility::Hidden);
        let shown = Mesh3d(mesh.clone());
        self.commands.spawn((piece, shown, MeshMaterial3d(material.clone()), hidden));
        mesh
    }
}

fn mesh(solid: Solid) -> Mesh {
    let linear = |[r, g, b]: &Tone| Color::srgb(*r, *g, *b).to_linear().to_f32_array();
    let colours: Vec<[f32; 4]> = solid.tones.iter().map(linear).collect();
    let corners = solid.triangles.into_iter().flatten().collect();
    Mesh::new(PrimitiveTopology::TriangleList, RenderAssetUsages::RENDER_WORLD)
        .with_inserted_attribute(Mesh::ATTRIBUTE_POSITION, solid.positions)
        .with_inserted_attribute(Mesh::ATTRIBUTE_NORMAL, solid.normals)
        .with_inserted_attribute(Mesh::ATTRIBUTE_COLOR, colours)
        .with_inserted_indices(Indices::U32(corners))
}
