//! # wirelore-transport
//!
//! Messages that are longer than a frame, or wrapped in others, put together again. It is responsible for the rules of the transports
//! alone: what it is fed are the bytes of frames in the order of the log, and what it gives back are whole messages and, where there is
//! none, what went wrong and where. It never reads a file, never knows what a message means, and never takes memory because of a length
//! that was only announced.
