//! Trade units to SI and back, at the edges only.
