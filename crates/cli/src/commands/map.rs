//! `wirelore map`: the vehicle's networks as a picture.

use std::path::{Path, PathBuf};

use wirelore_draw::{Blank, MapOptions, VehicleMap};
use wirelore_model::{Database, FrameId};
use wirelore_survey::Topic;

use crate::args::{MapArguments, MapForm};
use crate::atomic::{refuse_overwriting, write_whole};
use crate::commands::explain::{find_frame, nearest, signals_of};
use crate::description::load;
use crate::failure::{Failure, Outcome};
use crate::summary::NAMED;
use crate::tell::{tell_line, visible_lines};

/// Draws the map and writes it; an exercise as SVG gets a second file with its solution.
pub(crate) fn run(arguments: &MapArguments) -> Result<Outcome, Failure> {
    let form = form(arguments)?;
    refuse_contradictions(arguments, form)?;
    let database = load(&arguments.description)?;
    let options = MapOptions {
        networks: listed(arguments.network.as_deref(), |name| network(&database, name))?,
        listen: arguments.listen.as_deref().map(|name| topic(&database, name)).transpose()?,
        blank: if arguments.blank { Blank::Exercise } else { Blank::No },
        marked: listed(arguments.mark.as_deref(), |name| control_unit(&database, name))?,
        certainty: arguments.certainty,
    };
    let output = arguments.output.as_deref();
    let solution = output.filter(|_| arguments.blank && form == MapForm::Svg).map(solution_path);
    for path in output.iter().copied().chain(solution.as_deref()) {
        refuse_overwriting(path, [arguments.description.as_str()])?;
    }
    if let Some(path) = &solution {
        let options = MapOptions { blank: Blank::Solution, ..options.clone() };
        write_whole(Some(path), VehicleMap::new(&database, options).svg().as_bytes())?;
        tell_line(&format!("the solution is in {}", path.display()));
    }
    let map = VehicleMap::new(&database, options);
    let text = match form {
        MapForm::Svg => map.svg(),
        MapForm::Html => map.html(),
        MapForm::Text => visible_lines(&map.text()),
    };
    write_whole(output, text.as_bytes())?;
    Ok(Outcome::Clean)
}

/// What to write: what is asked for, else what the ending says, else text.
fn form(arguments: &MapArguments) -> Result<MapForm, Failure> {
    let Some(output) = arguments.output.as_deref().filter(|_| arguments.form.is_none()) else {
        return Ok(arguments.form.unwrap_or(MapForm::Text));
    };
    match output.extension().and_then(|ending| ending.to_str()) {
        Some("svg") => Ok(MapForm::Svg),
        Some("html" | "htm") => Ok(MapForm::Html),
        Some("txt") => Ok(MapForm::Text),
        _ if output == Path::new("-") => Ok(MapForm::Text),
        _ => Err(Failure::Usage(format!(
            "cannot tell from \"{}\" what to write; let its name end in .svg, .html or .txt, or say --to svg, --to html or --to text",
            output.display()
        ))),
    }
}

fn refuse_contradictions(arguments: &MapArguments, form: MapForm) -> Result<(), Failure> {
    let refuse = |why: &str| Err(Failure::Usage(why.to_owned()));
    let to_file = arguments.output.as_deref().is_some_and(|output| output != Path::new("-"));
    match (arguments.blank, form) {
        (true, MapForm::Text) => {
            refuse("--blank draws empty boxes to be filled in; give a file for it, such as -o map.svg or -o map.html")
        }
        (true, MapForm::Svg) if !to_file => {
            refuse("--blank writes the solution beside the exercise; give a file for it, such as -o map.svg")
        }
        (true, _) if arguments.listen.is_some() => {
            refuse("--blank leaves names out and --listen tells them; choose one of them")
        }
        _ => Ok(()),
    }
}

/// `map.svg` has its solution in `map.solution.svg`.
fn solution_path(output: &Path) -> PathBuf {
    let mut name = output.file_stem().unwrap_or_default().to_owned();
    name.push(".solution.");
    name.push(output.extension().unwrap_or("svg".as_ref()));
    output.with_file_name(name)
}

/// What is listened to: a frame, `FRAME.SIGNAL`, or a signal of which there is one.
fn topic(database: &Database, name: &str) -> Result<Topic, Failure> {
    if let Some((frame, _)) = database.frame_named(name) {
        return Ok(frame.into());
    }
    if let Some((frame, signal)) = name.split_once('.') {
        let frame = find_frame(database, frame)?;
        return Ok(Topic { frame, signals: signals_of(&database.frames[frame.index()], signal)? });
    }
    let signals = |frame: FrameId| database.frames[frame.index()].signals_named(name).map(|(id, _)| id).collect();
    let frames = (0..database.frames.len() as u32).map(FrameId);
    let found: Vec<Topic> = frames.map(|frame| Topic { frame, signals: signals(frame) }).collect();
    let mut found = found.into_iter().filter(|topic| !topic.signals.is_empty());
    let Some(first) = found.next() else {
        let frames = database.frames.iter();
        let names = frames.flat_map(|frame| [&frame.label].into_iter().chain(frame.signals.iter().map(|it| &it.label)));
        let near = nearest(name, names.map(|label| label.name.as_str()));
        return Err(Failure::Usage(format!("the description has no frame and no signal \"{name}\"{near}")));
    };
    let others: Vec<Topic> = found.collect();
    if others.is_empty() {
        return Ok(first);
    }
    let full = |topic: &Topic| format!("{}.{name}", database.frames[topic.frame.index()].label.name);
    let all: Vec<String> = [&first].into_iter().chain(&others).take(NAMED).map(full).collect();
    let rest = match (1 + others.len()).saturating_sub(NAMED) {
        0 => String::new(),
        rest => format!(" and {rest} more"),
    };
    Err(Failure::Usage(format!("several frames have a signal \"{name}\": say which of {}{rest}", all.join(", "))))
}

/// The items of a list with commas.
fn listed<T>(list: Option<&str>, find: impl Fn(&str) -> Result<T, Failure>) -> Result<Vec<T>, Failure> {
    let names = list.into_iter().flat_map(|list| list.split(',')).map(str::trim).filter(|name| !name.is_empty());
    names.map(find).collect()
}

fn network(database: &Database, name: &str) -> Result<wirelore_model::NetworkId, Failure> {
    database.network_named(name).map(|(id, _)| id).ok_or_else(|| {
        let near = nearest(name, database.networks.iter().map(|network| network.label.name.as_str()));
        Failure::Usage(format!("the description has no network \"{name}\"{near}"))
    })
}

fn control_unit(database: &Database, name: &str) -> Result<wirelore_model::EcuId, Failure> {
    database.ecu_named(name).map(|(id, _)| id).ok_or_else(|| {
        let near = nearest(name, database.ecus.iter().map(|ecu| ecu.label.name.as_str()));
        Failure::Usage(format!("the description has no control unit \"{name}\"{near}"))
    })
}
