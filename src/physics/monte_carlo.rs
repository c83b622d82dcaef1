//! The budget drawn at random.
