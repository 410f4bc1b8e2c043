//! `wirelore budget`: how full each network is, and how late each frame can get.

mod added;
mod changed;
mod described;
mod pages;
mod recorded;
mod sheet;
mod two;
mod words;

use std::path::Path;

use wirelore_draw::LoadBars;
use wirelore_model::{Database, NetworkId};
use wirelore_survey::budget::Budget;

use crate::args::{BudgetArguments, BudgetForm};
use crate::atomic::{refuse_overwriting, write_whole};
use crate::description::{load, stores_description};
use crate::failure::{Failure, Outcome};
use crate::output::csv::Fields;
use crate::tell::visible_lines;
use pages::{Page, Part};

/// Calculates, counts or compares, as the files tell.
pub(crate) fn run(arguments: &BudgetArguments) -> Result<Outcome, Failure> {
    let form = form_of(arguments)?;
    if arguments.guard_formulas && form != BudgetForm::Csv {
        return Err(Failure::Usage("--guard-formulas goes with --to csv".to_owned()));
    }
    let limit = arguments.limit.as_deref().map(parse_limit).transpose()?;
    if let Some(output) = &arguments.output {
        refuse_overwriting(output, arguments.files.iter().map(String::as_str))?;
    }
    let (descriptions, logs): (Vec<&str>, Vec<&str>) =
        arguments.files.iter().map(String::as_str).partition(|name| stores_description(name));
    if matches!(form, BudgetForm::Svg | BudgetForm::Html) {
        return match (descriptions.as_slice(), logs.as_slice()) {
            ([one], []) if !changed::is_asked_for(arguments) => bars(arguments, one, form, limit),
            _ => Err(Failure::Usage(
                "bars are drawn of one description as it is; tables show recordings, changes and second vehicles"
                    .to_owned(),
            )),
        };
    }
    let (page, outcome) = match (descriptions.as_slice(), logs.as_slice()) {
        ([], _) => {
            return Err(Failure::Usage(
                "no description is given: name a .lore, .json or .lorebin file first, then logs if there are any"
                    .to_owned(),
            ));
        }
        ([one], []) if changed::is_asked_for(arguments) => changed::run(arguments, one, limit)?,
        ([one], []) => of_description(arguments, one, limit)?,
        _ if changed::is_asked_for(arguments) => {
            return Err(Failure::Usage("--move, --rate and --add go with one description and no logs".to_owned()));
        }
        ([one], logs) => recorded::run(arguments, one, logs, limit)?,
        ([one, other], []) => two::run(one, other)?,
        ([_, _], _) => return Err(Failure::Usage("logs are held against one description; give one".to_owned())),
        (more, _) => {
            return Err(Failure::Usage(format!("two descriptions are held against each other, not {}", more.len())));
        }
    };
    let text = match form {
        BudgetForm::Table => visible_lines(&page.table()),
        BudgetForm::Csv => page.csv(Fields::of(arguments.guard_formulas)),
        _ => page.json(),
    };
    write_whole(arguments.output.as_deref(), text.as_bytes())?;
    Ok(outcome)
}

/// The networks that are asked for.
struct Wanted(Option<Vec<String>>);

impl Wanted {
    fn new(database: &Database, only: Option<&str>) -> Result<Self, Failure> {
        let Some(only) = only else { return Ok(Self(None)) };
        let names: Vec<String> = only.split(',').map(|name| name.trim().to_owned()).collect();
        for name in &names {
            find_network(database, name)?;
        }
        Ok(Self(Some(names)))
    }

    fn has(&self, database: &Database, network: NetworkId) -> bool {
        let name = &database.networks[network.index()].label.name;
        self.0.as_ref().is_none_or(|names| names.contains(name))
    }
}

/// The network of a name.
///
/// # Errors
/// [`Failure::Usage`] with the nearest name.
fn find_network(database: &Database, name: &str) -> Result<NetworkId, Failure> {
    database.network_named(name).map(|(id, _)| id).ok_or_else(|| {
        let names = database.networks.iter().map(|network| network.label.name.as_str());
        let near = match wirelore_model::nearest_name(name, names) {
            Some(near) => format!("; did you mean \"{near}\"?"),
            None => String::new(),
        };
        Failure::Usage(format!("the description has no network \"{name}\"{near}"))
    })
}

fn of_description(arguments: &BudgetArguments, name: &str, limit: Option<f64>) -> Result<(Page, Outcome), Failure> {
    let database = load(name)?;
    let wanted = Wanted::new(&database, arguments.only.as_deref())?;
    let budget = Budget::of(&database);
    let findings = words::findings(&database, &budget, limit, &wanted);
    let page = Page {
        title: title(&database),
        parts: vec![
            Part::sheet("networks", described::networks(&database, &budget, &wanted)),
            Part::lines("remarks", words::remarks(&database, &budget, &wanted)),
            Part::lines("findings", findings),
            Part::sheet("units", described::units(&database, &budget, &wanted)).shown_if(arguments.control_units),
            Part::sheet("frames", described::frames(&database, &budget, &wanted)).shown_if(arguments.frames),
            Part::sheet("paths", described::paths(&database, &budget, &wanted)).shown_if(arguments.frames),
        ],
        main: main_sheet(arguments),
    };
    Ok((page, outcome(&database, &budget, limit, &wanted)))
}

/// The load of each network as a picture.
fn bars(arguments: &BudgetArguments, name: &str, form: BudgetForm, limit: Option<f64>) -> Result<Outcome, Failure> {
    let database = load(name)?;
    let wanted = Wanted::new(&database, arguments.only.as_deref())?;
    let budget = Budget::of(&database);
    let bars = LoadBars::new(&database, &budget, |network| wanted.has(&database, NetworkId(network as u32)));
    let text = if form == BudgetForm::Svg { bars.svg() } else { bars.html() };
    write_whole(arguments.output.as_deref(), text.as_bytes())?;
    Ok(outcome(&database, &budget, limit, &wanted))
}

/// Whether there is something to look at.
fn outcome(database: &Database, budget: &Budget, limit: Option<f64>, wanted: &Wanted) -> Outcome {
    let is_exceeded = budget.is_exceeded(limit.unwrap_or(FULL), |network| wanted.has(database, network));
    if is_exceeded { Outcome::SomethingToLookAt } else { Outcome::Clean }
}

/// The limit where none is given: what a network can carry.
const FULL: f64 = 1.0;

/// Which table csv is.
fn main_sheet(arguments: &BudgetArguments) -> &'static str {
    match (arguments.frames, arguments.control_units) {
        (true, _) => "frames",
        (false, true) => "units",
        (false, false) => "networks",
    }
}

/// What the vehicle is called.
fn title(database: &Database) -> String {
    database.vehicle.as_ref().map_or_else(String::new, |vehicle| vehicle.label.display().to_owned())
}

fn form_of(arguments: &BudgetArguments) -> Result<BudgetForm, Failure> {
    if let Some(form) = arguments.form {
        return Ok(form);
    }
    let Some(output) = arguments.output.as_deref().filter(|output| *output != Path::new("-")) else {
        return Ok(BudgetForm::Table);
    };
    match output.extension().and_then(|ending| ending.to_str()) {
        Some("csv") => Ok(BudgetForm::Csv),
        Some("json") => Ok(BudgetForm::Json),
        Some("txt") => Ok(BudgetForm::Table),
        Some("svg") => Ok(BudgetForm::Svg),
        Some("html" | "htm") => Ok(BudgetForm::Html),
        _ => Err(Failure::Usage(format!(
            "cannot tell from \"{}\" what to write; let its name end in .csv, .json, .svg, .html or .txt, or say what with --to",
            output.display()
        ))),
    }
}

/// `60%` or `60`, as a part of 1.
fn parse_limit(text: &str) -> Result<f64, Failure> {
    let number = text.trim().trim_end_matches('%').trim();
    match number.parse::<f64>() {
        Ok(percent) if percent > 0.0 && percent.is_finite() => Ok(percent / 100.0),
        _ => Err(Failure::Usage(format!("--limit \"{text}\" is not a part of a network; write percent, such as 60%"))),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limits() {
        for (text, limit) in [("60%", 0.6), ("60", 0.6), (" 7.5 % ", 0.075), ("120%", 1.2)] {
            assert_eq!(parse_limit(text).ok(), Some(limit), "{text}");
        }
        for text in ["", "%", "0", "-5%", "half", "inf", "nan"] {
            assert!(parse_limit(text).is_err(), "{text}");
        }
    }
}
