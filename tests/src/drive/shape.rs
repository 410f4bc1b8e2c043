//! Shapes that a drive is made of. Only operations that IEEE 754 defines to the last bit: the recording must come out the same on
//! every machine, and the sine of one library is not that of another.

/// A value that follows another one with a time constant.
pub(crate) fn follow(value: &mut f64, target: f64, time_constant_s: f64, step_s: f64) {
    *value += (target - *value) * (step_s / (time_constant_s + step_s));
}

/// A value that follows another one at a limited speed.
pub(crate) fn creep_to(value: &mut f64, target: f64, per_second: f64, step_s: f64) {
    let most = per_second * step_s;
    *value += (target - *value).clamp(-most, most);
}

/// How far `at` has come on its way from `from` to `to`: 0 before, 1 after, no kink between.
pub(crate) fn passage(at: f64, from: f64, to: f64) -> f64 {
    let share = ((at - from) / (to - from)).clamp(0.0, 1.0);
    share * share * (3.0 - 2.0 * share)
}

/// A point between two values.
pub(crate) fn between(low: f64, high: f64, share: f64) -> f64 {
    low + (high - low) * share
}

/// The larger of two values, with the corner rounded off over `width`.
pub(crate) fn soft_max(a: f64, b: f64, width: f64) -> f64 {
    let apart = a - b;
    0.5 * (a + b + (apart * apart + width * width).sqrt())
}

/// The angle in degrees whose tangent is `slope`; good to 0.3 ° between -1 and 1.
pub(crate) fn angle_deg(slope: f64) -> f64 {
    const DEGREES_PER_RADIAN: f64 = 57.295_779_513_082_32;
    slope / (1.0 + 0.281_25 * slope * slope) * DEGREES_PER_RADIAN
}

/// The value at `at` on a way through points, without kinks at the points.
pub(crate) fn way_through(points: &[(f64, f64)], at: f64) -> f64 {
    let after = points.partition_point(|(time, _)| *time <= at);
    match (after.checked_sub(1).and_then(|before| points.get(before)), points.get(after)) {
        (Some((from, low)), Some((to, high))) => between(*low, *high, passage(at, *from, *to)),
        (Some((_, value)), None) | (None, Some((_, value))) => *value,
        (None, None) => 0.0,
    }
}

/// The value that the last point before `at` has set.
pub(crate) fn last_set<T: Copy>(points: &[(f64, T)], at: f64) -> Option<T> {
    let after = points.partition_point(|(time, _)| *time <= at);
    Some(points[after.checked_sub(1)?].1)
}
