//! The number under which the catalogue keeps a text; the catalogue is made with it, too.

/// The upper 24 bits of [`hash`]: the fewer, the less the page weighs. Two texts of the catalogue with the same key stop
/// its build; then other bits serve.
pub(crate) fn key(text: &str) -> u32 {
    hash(text) >> 8
}

/// FNV-1a with 32 bits (Fowler, Noll and Vo), over the bytes of `text`.
fn hash(text: &str) -> u32 {
    text.bytes().fold(0x811c_9dc5, |hash: u32, byte| (hash ^ u32::from(byte)).wrapping_mul(0x0100_0193))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_hash_is_the_published_one() {
        // Test vectors: Fowler, Noll, Vo and Eastlake, The FNV Non-Cryptographic Hash Algorithm, from memory.
        assert_eq!(["", "a", "foobar"].map(hash), [0x811c_9dc5, 0xe40c_292c, 0xbf9c_f968], "32 bits");
        assert_eq!(key("foobar"), 0x00bf_9cf9, "the upper 24");
    }
}
