//! Clefts shared out among orders, as a table of costs.

use backlift::workshop::orders::assignment::assigned;
use proptest::prelude::*;
use serde_json::Value;

type Costs = Vec<Vec<Option<f64>>>;

/// How many are served, and at which cost in all; each column once.
fn served(costs: &Costs) -> (usize, f64) {
    let chosen = assigned(costs);
    assert_eq!(chosen.len(), costs.len());
    let mut taken: Vec<usize> = chosen.iter().flatten().copied().collect();
    taken.sort_unstable();
    assert!(taken.windows(2).all(|it| it[0] < it[1]), "{taken:?}");
    let paid = chosen.iter().zip(costs).filter_map(|(column, row)| row[(*column)?]);
    assert_eq!(paid.clone().count(), taken.len(), "a forbidden pair was taken");
    (taken.len(), paid.sum())
}

/// Accepted: as many pairs, and the same cost in all to a thousandth, in which costs count.
#[test]
fn reference_fifty_drawn_tables_cost_what_scipy_finds() {
    let text = include_str!("../../../assets/reference/assignment.json");
    let file: Value = serde_json::from_str(text).unwrap();
    let tables = file["tables"].as_array().unwrap();
    assert_eq!(tables.len(), 50);
    let mut forbidden = 0;
    for (n, table) in tables.iter().enumerate() {
        let costs: Costs = serde_json::from_value(table["costs"].clone()).unwrap();
        forbidden += costs.iter().flatten().filter(|it| it.is_none()).count();
        let (count, total) = served(&costs);
        assert_eq!(count as u64, table["served"].as_u64().unwrap(), "table {n}");
        let theirs = table["total"].as_f64().unwrap();
        assert!((total - theirs).abs() <= 0.0011, "table {n}: {total} against {theirs}");
    }
    assert!(forbidden > 1000, "{forbidden}");
}

proptest! {
    /// Tried in full: no other way to share out serves more, or as many at less cost.
    #[test]
    fn no_other_way_is_better(
        costs in (1..5_usize, 1..5_usize).prop_flat_map(|(rows, columns)| {
            let cost = prop::option::weighted(0.7, (0..50_u32).prop_map(f64::from));
            prop::collection::vec(prop::collection::vec(cost, columns), rows)
        }),
    ) {
        fn best(costs: &[Vec<Option<f64>>], taken: &mut Vec<usize>) -> (usize, f64) {
            let Some((row, rest)) = costs.split_first() else { return (0, 0.0) };
            let mut found = best(rest, taken);
            for (column, cost) in row.iter().enumerate() {
                let Some(cost) = cost.filter(|_| !taken.contains(&column)) else { continue };
                taken.push(column);
                let (count, total) = best(rest, taken);
                taken.pop();
                if (count + 1, -(total + cost)) > (found.0, -found.1) {
                    found = (count + 1, total + cost);
                }
            }
            found
        }
        prop_assert_eq!(served(&costs), best(&costs, &mut Vec::new()));
        prop_assert_eq!(assigned(&costs), assigned(&costs));
    }
}

#[test]
fn nothing_to_share_out_and_nobody_to_serve_are_answers() {
    assert_eq!(assigned(&[]), []);
    assert_eq!(assigned(&[vec![], vec![]]), [None, None]);
    assert_eq!(assigned(&[vec![None, Some(f64::MAX)]]), [Some(1)]);
}
