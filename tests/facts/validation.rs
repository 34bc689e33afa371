//! Facts about the stage `validation`: the table keeps to what it promises.

use std::collections::BTreeSet;

use crate::outside::found;
use backlift::card::outside::{Held, OUTSIDE, Outside};
use backlift::validation::{Accept, Check, Group, Row, Verdict, checks, is_quick};
use rayon::prelude::*;

/// Asks a check, which must have rows and agree in each.
pub fn agrees(name: &str) {
    let check = checks().into_iter().find(|it| it.name == name).expect(name);
    let found = found(&check);
    assert!(!found.rows.is_empty());
    for row in &found.rows {
        assert!(row.verdict == Verdict::Agrees, "{row:#?}");
    }
}

/// How the rows came out: what the card quotes.
fn counted(rows: &[(Group, Row)]) -> Outside {
    let held = |group: Group| {
        let count = |verdict: Verdict| {
            rows.iter().filter(|(of, it)| *of == group && it.verdict == verdict).count()
        };
        Held {
            group: group.words(),
            agrees: count(Verdict::Agrees),
            by_construction: count(Verdict::ByConstruction),
            disagrees: count(Verdict::Disagrees),
            no_data: count(Verdict::NoData),
        }
    };
    let speed_or_time =
        |(of, it): &&(Group, Row)| *of == Group::Dynamics && ["m/s", "s"].contains(&it.unit);
    let misses = rows.iter().filter(speed_or_time).filter_map(|(_, it)| {
        let expected = it.expected.filter(|it| *it != 0.0)?;
        Some((it.difference()? / expected).abs())
    });
    Outside {
        groups: [
            Group::Dynamics,
            Group::BatInertia,
            Group::People,
            Group::Fatigue,
            Group::Collision,
            Group::Fitting,
        ]
        .map(held),
        mechanics_within: (1000.0 * misses.fold(0.0, f64::max)).ceil() / 1000.0,
    }
}

#[test]
fn every_check_has_a_name_of_its_own_and_none_is_a_groups() {
    let checks = checks();
    let names: BTreeSet<&str> = checks.iter().map(|it| it.name).collect();
    assert_eq!(names.len(), checks.len(), "{names:?}");
    assert!(checks.iter().all(|it| !names.contains(it.group.words())), "{names:?}");
    assert!(checks.iter().any(is_quick) && !checks.iter().all(is_quick));
}

#[test]
fn a_figure_that_is_not_a_number_agrees_with_nothing() {
    for accept in [
        Accept::Share(0.5),
        Accept::Within(1e9),
        Accept::Deviations(1e9),
        Accept::Between(-1e9, 1e9),
        Accept::AtMost,
        Accept::AtLeast,
    ] {
        let expected = (1.0, Some(1.0));
        let row = Row::compared("", "", "", expected, f64::NAN, accept);
        assert_eq!(row.verdict, Verdict::Disagrees, "{accept:?}");
    }
}

#[test]
fn a_row_just_inside_its_acceptance_agrees_and_just_outside_disagrees() {
    let verdict = |accept, ours| Row::compared("", "", "", (10.0, Some(2.0)), ours, accept).verdict;
    for (accept, inside, outside) in [
        (Accept::Share(0.01), 10.099, 10.101),
        (Accept::Within(0.5), 9.501, 9.499),
        (Accept::Deviations(2.0), 13.99, 14.01),
        (Accept::Between(3.0, 4.0), 4.0, 4.001),
        (Accept::AtMost, 10.0, 10.001),
        (Accept::AtLeast, 10.0, 9.999),
    ] {
        assert_eq!(verdict(accept, inside), Verdict::Agrees, "{accept:?}");
        assert_eq!(verdict(accept, outside), Verdict::Disagrees, "{accept:?}");
    }
}

/// A row that was built to agree is counted apart, and one that was and does not is a disagreement.
#[test]
fn a_row_built_from_its_figure_is_counted_apart_from_those_that_agree() {
    let row = |ours| {
        let accept = Accept::Share(1e-9);
        Row::compared("", "", "", 10.0, ours, accept).by_construction("why")
    };
    assert_eq!(row(10.0).verdict, Verdict::ByConstruction);
    assert_eq!(row(10.1).verdict, Verdict::Disagrees);
    let it = counted(&[row(10.0), row(10.1)].map(|it| (Group::Fatigue, it))).groups[3];
    assert_eq!((it.agrees, it.by_construction, it.disagrees), (0, 1, 1));
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn the_card_quotes_what_the_checks_find() {
    let rows = |it: Check| -> Vec<(Group, Row)> {
        found(&it).rows.iter().map(|row| (it.group, row.clone())).collect()
    };
    let rows: Vec<(Group, Row)> = checks().into_par_iter().map(rows).flatten().collect();
    assert_eq!(counted(&rows), OUTSIDE);
}

#[test]
fn the_sentence_of_the_card_names_the_mechanics_and_every_group_with_a_disagreement() {
    let said = OUTSIDE.sentence();
    let [mechanics, rest @ ..] = OUTSIDE.groups;
    for it in [mechanics].into_iter().chain(rest.into_iter().filter(|it| it.disagrees > 0)) {
        let part = format!("{} {} of {}", it.group, it.agrees, it.agrees + it.disagrees);
        assert!(said.contains(&part), "{part} is missing: {said}");
    }
    let built: usize = OUTSIDE.groups.iter().map(|it| it.by_construction).sum();
    assert!(said.contains(&format!("{built} more by construction")), "{said}");
}

/// Third column of the table: the claims' checks, between backticks.
#[test]
fn every_line_of_the_map_of_trust_names_checks_there_are() {
    let page = include_str!("../../assets/guide/trust.md");
    let section = page.split("## The map of trust").nth(1).unwrap();
    let lines = section.split("\n## ").next().unwrap().lines();
    let rows: Vec<Vec<&str>> = lines
        .filter(|line| line.starts_with("| ") && !line.starts_with("| ---"))
        .map(|line| line.split(" | ").collect())
        .skip(1)
        .collect();
    assert!(rows.len() >= 12);
    let checks = checks();
    for row in rows {
        let named: Vec<&str> = row[2].split('`').skip(1).step_by(2).collect();
        assert!(!named.is_empty(), "{}: no check stands behind it", row[0]);
        for name in named {
            assert!(checks.iter().any(|it| it.name == name), "{}: no check `{name}`", row[0]);
        }
    }
}
