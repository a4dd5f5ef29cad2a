//! The mechanics of holding turned parts in lathe chucks with soft jaws.
#![no_std]
#![forbid(unsafe_code)]

extern crate alloc;
#[cfg(test)]
extern crate std;

pub mod contact;
pub mod jaw_spring;
pub mod part;
