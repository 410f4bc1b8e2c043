//! Makes the demo recordings `schema/demo/town-drive*` anew. The same sources give the same bytes, on every machine.

use std::error::Error;
use std::fs;

use wirelore_tests::drive;

fn main() -> Result<(), Box<dyn Error>> {
    let database = drive::kestrel()?;
    let recording = drive::town_drive(&database)?;
    let path = drive::demo_folder().join("town-drive.pcapng");
    fs::write(&path, &recording.pcapng)?;
    println!("{}: {} frames, {} bytes", path.display(), recording.frames, recording.pcapng.len());
    for (network, frames) in &recording.frames_by_network {
        println!("  {network}: {frames} frames");
    }
    let others = drive::other_networks(&database)?;
    for (name, bytes) in others.files() {
        let path = drive::demo_folder().join(name);
        fs::write(&path, bytes)?;
        println!("{}: {} bytes", path.display(), bytes.len());
    }
    Ok(())
}
