//! The C doors.
