//! The whole swing of one bat as poses over time.
