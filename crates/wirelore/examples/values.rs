//! The shortest useful program: every value of a recording, a line each. Its lines are those of `wirelore decode ... --to csv` by a
//! description in which some frames tell who sent them.
//!
//! ```text
//! cargo run --example values -- van.lore drive.pcapng
//! ```

use std::error::Error;

use wirelore::decode::{Decoder, Event, Options, Reading, Session};
use wirelore::log::Recording;
use wirelore::model::SignalId;

fn main() -> Result<(), Box<dyn Error>> {
    let mut arguments = std::env::args().skip(1);
    let mut next = || arguments.next().ok_or("give a description and a recording");
    let database = wirelore::open(next()?)?;
    let decoder = Decoder::new(&database)?;
    let mut recording = Recording::open(next()?.as_ref(), &Default::default())?;
    let mut session = Session::new(&decoder, &Options::default())?;
    println!("time,network,frame,source,signal,value,unit,state");
    session.run(&mut recording, &mut |event: &Event<'_>, signal: SignalId, reading: Reading<'_>| {
        let (network, frame) = (&database[event.network], &database[event.frame]);
        let unit = decoder.unit(event.frame, signal).map_or("", |unit| unit.as_str());
        let source = event.source.map_or_else(String::new, |source| source.to_string());
        println!(
            "{},{},{},{source},{},{},{unit},{}",
            event.seconds(),
            network.label.name,
            frame.label.name,
            frame[signal].label.name,
            reading.value,
            reading.state(None)
        );
    })?;
    Ok(())
}
