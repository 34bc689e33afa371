//! Facts about the stage `sensitivity`.

mod estimators;
