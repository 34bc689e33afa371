//! An invented card, and invented pictures, to draw.

use backlift::card::order::{Order, Wish};
use backlift::card::{Asked, Card, Condition, Figure, HandleShape, PlayerLine, cautions};
use backlift::drawing::arc::{ArcMoment, ArcPicture};
use backlift::drawing::chart::{Curve, Point};
use backlift::drawing::innings_chart::{InningsPicture, StrokePanel};
use backlift::drawing::map_picture::{MapBat, MapPicture, MapTarget};
use backlift::frames::DVec3;
use backlift::measurement::person::Handed;
use backlift::measurement::plan::Middle;

/// A junior's card.
pub fn card() -> Card {
    let refit_stature_m = cautions::refit_stature_m(13.4, 1.56);
    let mut said = cautions::standing(13.4, refit_stature_m);
    said.push("With a trunk 30 % weaker the choice would be 25 g lighter.".to_owned());
    Card {
        player: PlayerLine { age_y: 13.4, stature_m: 1.56, handed: Handed::Right },
        invented: true,
        size: "5".to_owned(),
        length_m: 0.781,
        figures: Figure::ALL.map(|it| match it {
            Figure::SwingMoment => Asked::new(0.1583, [0.1545, 0.1606]),
            Figure::DeadWeight => Asked::new(1.021, [0.998, 1.035]),
            Figure::Balance => Asked::new(0.497, [0.490, 0.502]),
            Figure::SweetSpot => Asked::new(0.179, [0.172, 0.188]),
            Figure::HandleDiameter => Asked::new(0.0335, [0.0325, 0.0345]),
        }),
        region: None,
        pickup_weight_kg: 0.987,
        pendulum_pivot_m: 0.1524,
        pendulum_swings: 10,
        pendulum_time_s: Asked::new(13.46, [13.3, 13.56]),
        handle_shape: HandleShape::Oval,
        reason: "At fifty runs this player still pulls and hooks in time with this bat. With the heaviest of the four weighed, the late pull loses 0.9 m/s and the top wrist works at 96 % of what it can.".to_owned(),
        how_sure: "Sure of the direction, less of the amount: the fall from ten to fifty rests on few studies.".to_owned(),
        cautions: said,
        condition: Condition { grips: 1, toe_guard: false, oiled: false },
        refit_stature_m,
        order: None,
        software: "backlift 0.1.0".to_owned(),
        model: "2026-11".to_owned(),
    }
    .rounded_for_the_bench()
}

/// The same card under an order with this note.
pub fn ordered(note: &str) -> Card {
    let wish = Wish {
        middle: Some(Middle::High),
        handle_shape: Some(HandleShape::Round),
        grips: Some(2),
        note: Some(note.to_owned()),
    };
    card().ordered(Some(Order { number: Some("2026-1138".to_owned()), wish }))
}

/// The same card as its code has it: figures and standing cautions, no other sentence.
pub fn figures_of(card: &Card) -> Card {
    Card {
        reason: String::new(),
        how_sure: String::new(),
        cautions: cautions::standing(card.player.age_y, card.refit_stature_m),
        ..card.clone()
    }
}

/// A map with a hill, a corner that cannot be made, and four bats.
pub fn map() -> MapPicture {
    let mass_kg: Vec<f64> = (0..13).map(|k| 0.90 + 0.02 * f64::from(k)).collect();
    let balance_m: Vec<f64> = (0..9).map(|k| 0.47 + 0.007 * f64::from(k)).collect();
    let mut value = Vec::new();
    let mut pickup_weight_kg = Vec::new();
    for balance in &balance_m {
        for mass in &mass_kg {
            let pickup = mass * (1.0 + 3.0 * (balance - 0.497));
            let speed = 78.0 - 400.0 * (pickup - 1.0) * (pickup - 1.0) + 6.0 * (mass - 1.0);
            value.push((pickup < 1.13 && mass - 2.0 * balance > -0.09).then_some(speed));
            pickup_weight_kg.push(Some(pickup));
        }
    }
    let bats = [(1.02, 0.505), (1.07, 0.51), (0.96, 0.482), (1.11, 0.492)];
    MapPicture {
        sentence:
            "The hill is flat: anything inside the frame hits within half a per cent of the best"
                .to_owned(),
        mass_kg,
        balance_m,
        value,
        value_label: "ball speed off the bat at fifty, km/h".to_owned(),
        pickup_weight_kg,
        bats: bats
            .iter()
            .map(|(mass_kg, balance_m)| MapBat { mass_kg: *mass_kg, balance_m: *balance_m })
            .collect(),
        target: Some(MapTarget {
            mass_kg: Asked::new(1.0, [0.985, 1.012]),
            balance_m: Asked::new(0.493, [0.488, 0.498]),
        }),
    }
}

/// A quarter circle of a swing.
pub fn arc() -> ArcPicture {
    let moment = |k: u32| {
        let t_s = 0.014 * f64::from(k);
        let turn = 2.6 - 2.9 * f64::from(k) / 20.0;
        let hands = DVec3::new(0.25 - 0.3 * turn.cos(), -0.2 + 0.2 * turn, 1.0 + 0.12 * turn);
        let along =
            DVec3::new(-turn.sin(), -0.6 * turn.cos(), 0.8 * (turn - 1.0).sin() - 0.3).normalize();
        ArcMoment {
            t_s,
            handle_top_W: hands,
            toe_W: hands + along * 0.78,
            contact_point_W: hands + along * 0.6,
        }
    };
    ArcPicture {
        sentence: "The pull meets the ball 0.25 s after the top of the backlift, at waist height"
            .to_owned(),
        bat: 1,
        moments: (0..=20).map(moment).collect(),
        contact: Some(18),
    }
}

/// Two strokes, four bats.
pub fn innings() -> InningsPicture {
    let curve = |bat: usize, start: f64, drop: f64| Curve {
        bat,
        label: ["the old one", "brother's", "club bat", "gift"][bat].to_owned(),
        points: (0..=10)
            .map(|k| {
                let share = f64::from(k) / 10.0;
                Point { x: 50.0 * share, y: start - drop * share, sd: 0.1 + 0.5 * drop * share }
            })
            .collect(),
    };
    let panel = |stroke: &str, start: f64| StrokePanel {
        stroke: stroke.to_owned(),
        curves: vec![
            curve(0, start, 0.5),
            curve(1, start - 0.6, 0.9),
            curve(2, start + 0.5, 0.4),
            curve(3, start - 0.7, 0.7),
        ],
    };
    InningsPicture {
        sentence: "Late on, he pulls the lighter bat 1.1 m/s faster; that is more than the measuring error"
            .to_owned(),
        figure: "bat speed, m/s".to_owned(),
        least_span: 2.0,
        panels: vec![panel("Pull", 18.5), panel("Hook", 17.0), panel("Drive", 20.0)],
    }
}
