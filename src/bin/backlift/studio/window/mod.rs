//! The bevy side: scene, cameras, screenshots.
