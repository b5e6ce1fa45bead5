//! What the readings say of the system.
