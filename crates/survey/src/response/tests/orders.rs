//! Other orders of priority.

use proptest::prelude::*;

use super::*;

/// A fast stream behind three slow ones waits for all of them; in front it waits for one.
#[test]
fn an_order_by_deadline_where_identifiers_were_given_out_otherwise() {
    let slow = stream(10, 1000, 0, 1000);
    let streams = [slow, slow, slow, stream(10, 100, 0, 25)];
    assert_eq!(worst(&streams, 1)[3], Ok(Ticks(40)));
    let found = order(&streams, Ticks(1));
    assert_eq!(found, Order::Found(vec![3, 0, 1, 2]));
}

/// The paper's example has none: whichever is last comes 3.0 ms late at least, and the longest deadline is 3.25 with 3.5 ms for two of them.
#[test]
fn the_example_of_the_paper_has_no_order() {
    let streams = [stream(1000, 2500, 0, 2500), stream(1000, 3500, 0, 3250), stream(1000, 3500, 0, 3250)];
    assert_eq!(order(&streams, Ticks(8)), Order::Impossible(vec![0, 1, 2]));
}

/// What is left without an order leaves out those that are content with the lowest priorities.
#[test]
fn those_that_can_be_last_are_not_in_the_way() {
    let hasty = stream(10, 100, 0, 15);
    let patient = stream(10, 1000, 0, 1000);
    assert_eq!(order(&[patient, hasty, hasty, patient], Ticks(1)), Order::Impossible(vec![1, 2]));
    assert_eq!(order(&[], Ticks(1)), Order::Found(vec![]));
}

/// Every order of so many.
fn permutations(count: usize) -> Vec<Vec<usize>> {
    if count == 0 {
        return vec![vec![]];
    }
    let shorter = permutations(count - 1);
    shorter
        .iter()
        .flat_map(|row| {
            (0..count).map(|place| {
                let mut row = row.clone();
                row.insert(place, count - 1);
                row
            })
        })
        .collect()
}

fn does(streams: &[Stream], row: &[usize]) -> bool {
    let ordered: Vec<Stream> = row.iter().map(|&index| streams[index]).collect();
    responses(&ordered, Ticks(1)).iter().zip(&ordered).all(|(response, stream)| response.meets(stream.deadline))
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2000, ..ProptestConfig::default() })]

    /// All orders of up to five streams, tried one by one.
    #[test]
    fn an_order_is_found_exactly_where_there_is_one(
        times in prop::collection::vec((1..24_u64, 20..200_u64, 0..40_u64, 20..150_u64), 1..6),
    ) {
        let streams: Vec<Stream> = times.into_iter().map(|(c, t, j, d)| stream(c, t, j, d)).collect();
        let exists = permutations(streams.len()).iter().any(|row| does(&streams, row));
        match order(&streams, Ticks(1)) {
            Order::Found(row) => prop_assert!(does(&streams, &row)),
            Order::Impossible(left) => prop_assert!(!exists && !left.is_empty()),
            Order::Unknown => prop_assert!(false, "so few streams are no effort"),
        }
    }
}
