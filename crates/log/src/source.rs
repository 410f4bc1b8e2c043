//! The bytes of a log: counted as they come from the file, and unpacked where they are compressed.

use std::fs::File;
use std::io::{self, BufRead, BufReader, Read, Seek, SeekFrom};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};

use flate2::bufread::MultiGzDecoder;
use ruzstd::decoding::errors::{FrameDecoderError, ReadFrameHeaderError};
use ruzstd::decoding::{BlockDecodingStrategy, FrameDecoder};

/// Bytes asked of the file at a time.
const CHUNK_BYTES: usize = 256 * 1024;
/// The first bytes of a gzip member: RFC 1952 section 2.3.1, with the only method it knows.
const GZIP_MAGIC: [u8; 3] = [0x1F, 0x8B, 0x08];
/// The first bytes of a Zstandard frame: RFC 8878 section 3.1.1.
const ZSTD_MAGIC: [u8; 4] = [0x28, 0xB5, 0x2F, 0xFD];

/// What is known of the file itself while it is read through other layers.
#[derive(Debug, Default)]
pub(crate) struct Progress {
    bytes: AtomicU64,
    failed: AtomicBool,
}

impl Progress {
    /// Bytes taken from the file so far.
    pub(crate) fn bytes(&self) -> u64 {
        self.bytes.load(Ordering::Relaxed)
    }

    /// Notes that the first `bytes` of the file have been taken.
    pub(crate) fn reached(&self, bytes: u64) {
        self.bytes.store(bytes, Ordering::Relaxed);
    }

    /// Whether the file itself failed, and not the unpacking of what it gave.
    pub(crate) fn failed(&self) -> bool {
        self.failed.load(Ordering::Relaxed)
    }
}

/// The file, with every byte counted.
struct Counted {
    inner: Box<dyn Read + Send>,
    progress: Arc<Progress>,
}

impl Read for Counted {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        match self.inner.read(buffer) {
            Ok(count) => {
                self.progress.bytes.fetch_add(count as u64, Ordering::Relaxed);
                Ok(count)
            }
            Err(error) => {
                if error.kind() != io::ErrorKind::Interrupted {
                    self.progress.failed.store(true, Ordering::Relaxed);
                }
                Err(error)
            }
        }
    }
}

/// A file from byte `offset` on, once it is read.
struct From {
    file: File,
    offset: Option<u64>,
}

impl Read for From {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        if let Some(offset) = self.offset.take() {
            self.file.seek(SeekFrom::Start(offset))?;
        }
        self.file.read(buffer)
    }
}

/// The bytes of a file that is not compressed, from byte `offset` on.
pub(crate) fn counted_from(file: File, offset: u64, progress: Arc<Progress>) -> Box<dyn Read + Send> {
    Box::new(Counted { inner: Box::new(From { file, offset: Some(offset) }), progress })
}

/// Whether the first bytes of a file are those of a compressed one.
pub(crate) fn is_packed(first: &[u8]) -> bool {
    first.starts_with(&GZIP_MAGIC) || first.starts_with(&ZSTD_MAGIC)
}

/// Looks at the first bytes and puts the fitting unpacker in front of the file.
pub(crate) fn unpacked(file: Box<dyn Read + Send>, progress: Arc<Progress>) -> io::Result<Box<dyn Read + Send>> {
    let mut counted = Counted { inner: file, progress };
    let mut magic = Vec::with_capacity(ZSTD_MAGIC.len());
    counted.by_ref().take(ZSTD_MAGIC.len() as u64).read_to_end(&mut magic)?;
    let is_gzip = magic.starts_with(&GZIP_MAGIC);
    let is_zstd = magic.starts_with(&ZSTD_MAGIC);
    let whole = io::Cursor::new(magic).chain(counted);
    Ok(if is_gzip {
        Box::new(MultiGzDecoder::new(BufReader::with_capacity(CHUNK_BYTES, whole)))
    } else if is_zstd {
        Box::new(ZstdFrames::new(BufReader::with_capacity(CHUNK_BYTES, whole)))
    } else {
        Box::new(whole)
    })
}

/// All Zstandard frames of a stream, one after another.
struct ZstdFrames<R> {
    source: R,
    decoder: FrameDecoder,
    inside_frame: bool,
    failure: Option<FrameDecoderError>,
}

impl<R: BufRead> ZstdFrames<R> {
    fn new(source: R) -> Self {
        Self { source, decoder: FrameDecoder::new(), inside_frame: false, failure: None }
    }

    /// Starts the next frame; false at the end of the stream.
    fn begin_frame(&mut self) -> io::Result<bool> {
        loop {
            if self.source.fill_buf()?.is_empty() {
                return Ok(false);
            }
            match self.decoder.reset(&mut self.source) {
                Ok(()) => return Ok(true),
                Err(FrameDecoderError::ReadFrameHeaderError(ReadFrameHeaderError::SkipFrame { length, .. })) => {
                    io::copy(&mut self.source.by_ref().take(u64::from(length)), &mut io::sink())?;
                }
                Err(error) => return Err(io::Error::other(error)),
            }
        }
    }

    /// Unpacks one more block. After damage the decoder still holds back a window of good bytes: an empty last block, made
    /// up here, ends the frame so that they can be taken.
    fn unpack_block(&mut self) {
        const EMPTY_LAST_BLOCK_AND_CHECKSUM: [u8; 7] = [1, 0, 0, 0, 0, 0, 0];
        if let Err(error) = self.decoder.decode_blocks(&mut self.source, BlockDecodingStrategy::UptoBlocks(1)) {
            if !self.decoder.is_finished() {
                let ending = &EMPTY_LAST_BLOCK_AND_CHECKSUM[..];
                let _ = self.decoder.decode_blocks(ending, BlockDecodingStrategy::UptoBlocks(1));
            }
            self.failure = Some(error);
        }
    }

    /// Ends a frame whose bytes have all been taken.
    fn end_frame(&mut self) -> io::Result<()> {
        self.inside_frame = false;
        let told = self.decoder.get_checksum_from_data();
        if told.is_some() && told != self.decoder.get_calculated_checksum() {
            return Err(io::Error::other("the checksum of a Zstandard frame does not fit its content"));
        }
        Ok(())
    }
}

impl<R: BufRead> Read for ZstdFrames<R> {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        loop {
            if self.inside_frame && self.decoder.can_collect() > 0 {
                return self.decoder.read(buffer);
            }
            if let Some(error) = self.failure.take() {
                self.inside_frame = false;
                return Err(io::Error::other(error));
            }
            if !self.inside_frame {
                if !self.begin_frame()? {
                    return Ok(0);
                }
                self.inside_frame = true;
            } else if self.decoder.is_finished() {
                self.end_frame()?;
            } else {
                self.unpack_block();
            }
        }
    }
}
