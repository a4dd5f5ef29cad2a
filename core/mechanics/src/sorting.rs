//! One sort for every list. Each kind of item that the standard library sorts adds some seven kilobytes to the page,
//! so it sorts places in a list, and nothing else.

use alloc::vec::Vec;
use core::cmp::Ordering;

/// Puts `items` in order; equal ones keep theirs.
///
/// ```
/// let mut forces = vec![3.5, 1.0, 2.5];
/// holdround_mechanics::sorting::sort(&mut forces, f64::total_cmp);
/// assert_eq!(forces, [1.0, 2.5, 3.5]);
/// ```
pub fn sort<T: Copy>(items: &mut Vec<T>, order: impl Fn(&T, &T) -> Ordering) {
    let mut places: Vec<usize> = (0..items.len()).collect();
    sort_places(&mut places, &|a, b| order(&items[a], &items[b]));
    *items = places.into_iter().map(|at| items[at]).collect();
}

fn sort_places(places: &mut [usize], order: &dyn Fn(usize, usize) -> Ordering) {
    places.sort_by(|a, b| order(*a, *b));
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn items_come_in_order_and_equal_ones_keep_theirs() {
        let mut items = alloc::vec![(3, 'a'), (1, 'b'), (3, 'c'), (2, 'd'), (1, 'e')];
        sort(&mut items, |a, b| a.0.cmp(&b.0));
        assert_eq!(items, [(1, 'b'), (1, 'e'), (2, 'd'), (3, 'a'), (3, 'c')]);
    }
}
