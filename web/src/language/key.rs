//! The number under which the catalogue keeps a text; the catalogue is made with it, too.

/// FNV-1a with 32 bits (Fowler, Noll and Vo), over the bytes of `text`.
pub(crate) fn key(text: &str) -> u32 {
    text.bytes().fold(0x811c_9dc5, |hash: u32, byte| (hash ^ u32::from(byte)).wrapping_mul(0x0100_0193))
}
