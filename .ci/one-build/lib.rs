//! Empty: what counts is the table of features beside it.
