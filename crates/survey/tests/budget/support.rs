//! Descriptions out of text.

use wirelore_lang::check_text;
use wirelore_model::Database;
use wirelore_survey::budget::{Budget, NetworkLoad};

pub(crate) fn described(text: &str) -> Database {
    let checked = check_text("budget.lore", text);
    let told: Vec<&str> = checked.diagnostics.iter().map(|it| it.message.as_str()).collect();
    checked.database.unwrap_or_else(|| panic!("{told:?}"))
}

/// The load of the network with this name.
pub(crate) fn load_of(text: &str, network: &str) -> NetworkLoad {
    let database = described(text);
    let (id, _) = database.network_named(network).expect("it is there");
    Budget::of(&database).networks.swap_remove(id.index())
}

/// Equal up to the rounding of doubles.
#[track_caller]
pub(crate) fn assert_near(found: f64, expected: f64) {
    assert!((found - expected).abs() <= 1e-9 * expected.abs().max(1.0), "{found} is not {expected}");
}
