//! How sure a hit's figures are: the same hit with each assumption moved by its spread.
