//! An order of the nodes that keeps the envelope of the stiffness small.

use super::mesh::Mesh;
use crate::sorting::sort;
use alloc::collections::VecDeque;
use alloc::vec::Vec;

/// Loads that a factor is taken to serve: points of a band.
const LOADS: usize = 13;

/// For each position in the order, the node; of three orders and their reverses the one in which it is least work to
/// factor and to solve for loads at the nodes `loaded`: along z, along r, and Cuthill-McKee
/// (E. Cuthill and J. McKee, Proc. 24th ACM National Conference, 1969; from memory).
pub(crate) fn order(mesh: &Mesh, loaded: &[usize]) -> Vec<usize> {
    let along = |first: usize| {
        let mut nodes: Vec<usize> = (0..mesh.nodes.len()).collect();
        sort(&mut nodes, |&a, &b| {
            let (a, b) = (mesh.nodes[a], mesh.nodes[b]);
            let (major, minor) = (a[first].total_cmp(&b[first]), a[1 - first].total_cmp(&b[1 - first]));
            major.then(minor)
        });
        nodes
    };
    let forward = [along(1), along(0), cuthill_mckee(mesh)];
    let reversed = forward.clone().map(|order| order.into_iter().rev().collect());
    forward.into_iter().chain(reversed).min_by_key(|order| work(mesh, order, loaded)).unwrap_or_default()
}

/// First neighbour, in the order, of the node at each position (itself at the latest).
pub(crate) fn first_neighbours(mesh: &Mesh, position: &[usize]) -> Vec<usize> {
    let mut first: Vec<usize> = (0..position.len()).collect();
    for element in &mesh.elements {
        let least = element.iter().map(|&n| position[n]).min().unwrap_or(0);
        for &n in element {
            first[position[n]] = first[position[n]].min(least);
        }
    }
    first
}

/// Position of each node in an order.
pub(crate) fn positions(order: &[usize]) -> Vec<usize> {
    let mut position = alloc::vec![0; order.len()];
    for (at, &node) in order.iter().enumerate() {
        position[node] = at;
    }
    position
}

/// Products of blocks: half a squared row to factor each, and a row for each load to solve, once there and once back.
/// On the way there, rows before the first load are skipped.
fn work(mesh: &Mesh, order: &[usize], loaded: &[usize]) -> usize {
    let position = positions(order);
    let from = loaded.iter().map(|&node| position[node]).min().unwrap_or(0);
    first_neighbours(mesh, &position)
        .iter()
        .enumerate()
        .map(|(at, first)| {
            let row = at - first + 1;
            let ways = if at < from { 1 } else { 2 };
            3 * row * row / 2 + ways * LOADS * row
        })
        .sum()
}

fn cuthill_mckee(mesh: &Mesh) -> Vec<usize> {
    let neighbours = neighbours(mesh);
    let Some(start) = (0..neighbours.len()).min_by_key(|&n| neighbours[n].len()) else {
        return Vec::new();
    };
    // A node far from anywhere makes narrow levels: walk to the far end twice.
    let far = |from: usize| level_order(&neighbours, from).last().copied().unwrap_or(from);
    level_order(&neighbours, far(far(start)))
}

fn level_order(neighbours: &[Vec<usize>], start: usize) -> Vec<usize> {
    let mut seen = alloc::vec![false; neighbours.len()];
    let mut order = Vec::with_capacity(neighbours.len());
    let mut waiting = VecDeque::from([start]);
    seen[start] = true;
    while let Some(node) = waiting.pop_front() {
        order.push(node);
        let mut next: Vec<usize> = neighbours[node].iter().copied().filter(|&n| !seen[n]).collect();
        sort(&mut next, |&a, &b| neighbours[a].len().cmp(&neighbours[b].len()));
        for n in next {
            seen[n] = true;
            waiting.push_back(n);
        }
    }
    order
}

fn neighbours(mesh: &Mesh) -> Vec<Vec<usize>> {
    let mut list: Vec<Vec<usize>> = alloc::vec![Vec::new(); mesh.nodes.len()];
    for element in &mesh.elements {
        for &a in element {
            list[a].extend(element.iter().copied().filter(|&b| b != a));
        }
    }
    for row in &mut list {
        sort(row, Ord::cmp);
        row.dedup();
    }
    list
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::part::profile::{Profile, Step};
    use crate::part::surface::{Band, Side};

    #[test]
    fn every_node_has_one_place_and_a_long_ring_a_short_envelope() {
        let profile = Profile::new(&[Step::cylinder(0.2, 0.15, 0.138)]).expect("a tube");
        let mesh = Mesh::new(&profile, &Band { side: Side::Outside, z: [0.0, 0.2], cells: Band::CELLS }, &[], 1.0)
            .expect("small");
        let mut nodes = order(&mesh, &[]);
        let first = first_neighbours(&mesh, &positions(&nodes));
        let longest = first.iter().enumerate().map(|(at, f)| at - f).max().unwrap_or(0);
        assert!(longest <= 14, "two elements across make rows of at most 14 blocks: {longest}");
        nodes.sort_unstable();
        assert!(nodes.iter().copied().eq(0..mesh.nodes.len()), "a permutation");
    }
}
