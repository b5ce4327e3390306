//! Whether each leaf of a door has a size at all.

use flapwright_model::acceptance::Topic;
use flapwright_model::part::{Part, Subject};

use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Number, Severity};

const NAME: &str = "leaf-has-no-size";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Width and height of each leaf after reveals, gaps, tweaks and the joint; and whether the stiles and \
rails of a framed leaf leave room for what they hold.

## Why it matters
A reveal larger than the opening, or a joint beside the door, leaves nothing to cut.

## Severity
Stop.

## What can be done
Correct the reveals, the tweaks, the joint or the widths of the frame.",
    severities: &[Severity::Stop],
    settings: &[],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for panel in &context.report.panels {
        if !matches!(panel.id.part, Part::Leaf { .. }) {
            continue;
        }
        let [width, height] = panel.size;
        let members = panel.infill.as_ref().map_or((0.0, 0.0), |infill| {
            let members = infill.members;
            (
                members.u_start + members.u_end,
                members.v_start + members.v_end,
            )
        });
        for (topic, word, size, taken) in [
            (Topic::Width, "width", width, members.0),
            (Topic::Height, "height", height, members.1),
        ] {
            if size > taken {
                continue;
            }
            let why = if taken > 0.0 {
                format!("its frame alone takes {}", context.length(taken))
            } else {
                "nothing is left to cut".to_owned()
            };
            let mut it = finding(
                NAME,
                Severity::Stop,
                format!(
                    "{}: its {word} comes out as {}, {why}",
                    context.panel_words(panel),
                    context.length(size)
                ),
                vec![Subject::Part(panel.id)],
            );
            it = it.about([Topic::Part(panel.id), topic]);
            it.numbers = vec![
                Number::mm(word, size),
                Number::mm(format!("taken by the frame, {word}"), taken),
            ];
            findings.push(it);
        }
    }
}
