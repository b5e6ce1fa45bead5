//! What is drawn, place by place.
