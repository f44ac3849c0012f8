//! The one way in which anything is changed, under hang-ups, double sending, and lost servers.

mod aborted;
mod keys;
mod restart;
