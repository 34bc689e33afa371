//! What was found for other programs, SI.

use backlift::calibration::posterior::Spread;
use backlift::measurement::nets::{Asked, Read};
use backlift::questions::calibrated::Found;
use serde_json::{Value, json};

use super::told::LIMITS;

fn spread(it: &Spread) -> Value {
    json!({ "mean": it.mean, "sd": it.sd, "low": it.low, "high": it.high })
}

fn both(before: Value, after: Value) -> Value {
    json!({ "by_tables": before, "with_readings": after })
}

/// All figures.
pub fn of(found: &Found) -> Value {
    let it = &found.calibrated;
    let strength = it.parts.iter().map(|part| {
        let band = |it: &Spread| {
            json!({
                "factor": libm::exp(it.mean),
                "log_sd": it.sd,
                "low": libm::exp(it.low),
                "high": libm::exp(it.high),
            })
        };
        json!({
            "part": part.part.words(),
            "by_tables": band(&part.before),
            "with_readings": band(&part.after),
        })
    });
    let figure = |value: [f64; 2], spreads: &[Spread; 2]| {
        let one = |value: f64, it: &Spread| json!({ "value": value, "mean": it.mean, "sd": it.sd, "low": it.low, "high": it.high });
        both(one(value[0], &spreads[0]), one(value[1], &spreads[1]))
    };
    let [before, after] = found.pull_m_s;
    let lost = [before, after].map(|[fresh, late]| 1.0 - late / fresh);
    let in_time = found.labels.iter().zip(&found.in_time).map(|(label, [before, after])| {
        json!({ "bat": label, "by_tables": before, "with_readings": after })
    });
    let readings = found.readings.iter().zip(&it.judged).map(|((line, reading), judged)| {
        let (time_s, speed_m_s) = match reading.read {
            Read::Time { time_s, .. } => (Some(time_s), None),
            Read::Speed { speed_m_s } => (None, Some(speed_m_s)),
        };
        json!({
            "line": line,
            "bat": found.labels[reading.bat],
            "stroke": reading.stroke,
            "stroke_time_s": time_s,
            "bat_speed_m_s": speed_m_s,
            "runs": reading.runs,
            "asked": match reading.asked { Asked::Fastest => "fastest", Asked::OwnPace => "own pace" },
            "off_share": judged.off_share,
            "off_sd": judged.off_sd,
            "counted": judged.counted,
            "doubted": judged.is_doubted(),
        })
    });
    json!({
        "bat": found.labels[found.bat],
        "readings_fresh": it.counts[0],
        "readings_tired": it.counts[1],
        "scatter_share": it.scatter,
        "strength": strength.collect::<Value>(),
        "spread": it.calibration.ln_spread,
        "covariance": it.calibration.ln_covariance(),
        "lasting": both(spread(&it.lasting[0]), spread(&it.lasting[1])),
        "pull": {
            "fresh_m_s": figure([before[0], after[0]], &it.surer.fresh_pull_m_s),
            "at_end_m_s": figure([before[1], after[1]], &it.surer.late_pull_m_s),
            "lost_share": figure(lost, &it.surer.lost),
            "runs": found.runs,
        },
        "in_time": in_time.collect::<Value>(),
        "readings": readings.collect::<Value>(),
        "curve_error_share": found.curve_error,
        "limits": LIMITS,
    })
}
