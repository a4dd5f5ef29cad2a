//! From a valid set-up to findings: the engines called in the order of the flow.
