use super::{Phase::Teardown, Step, hazard};
use crate::job::{CaseHistory, UseKind, ValveBodyKind};
use crate::rules::{Ask as _, YesNo as _};

/// Uses that pull at the case ears and the mount all day.
const HEAVY_WORK: &[UseKind] = &[UseKind::Tow, UseKind::Offroad];

pub(super) static STEPS: &[Step] = &[
    Step::new(
        "TD-01",
        Teardown,
        "Read both end plays before stripping",
        "Set a dial on the output shaft, then on the input shaft, and note both end plays before the first part comes \
         out.",
        "These readings show what the old washers gave. Without them choosing the new ones is guesswork.",
    ),
    Step::new(
        "TD-02",
        Teardown,
        "Strip it into trays",
        "Lay each assembly in its own tray. Keep the release springs of the forward and the direct clutch apart, and \
         leave every selective washer with a note of its place.",
        "Springs and washers that look alike are not alike, and once mixed nobody can tell.",
    )
    .hurts(hazard::SPRINGS),
    Step::new(
        "TD-03",
        Teardown,
        "Fill in the inside sheet",
        "Write down the shape of the one-way race and its number of elements, the center seal, the number of rings, how \
         the gears are cut, the output shaft and how many plates each pack holds.",
        "New parts are ordered by this sheet.",
    ),
    Step::new(
        "TD-04",
        Teardown,
        "Map the case",
        "Find every plug, ball, ground bridge and thread insert in the case and draw them in. Photograph the passages.",
        "An old plug or ball in a hidden passage makes the next valve body fail, and nobody sees it from outside.",
    )
    .hold()
    .when(
        |j| j.case.history.is_not(CaseHistory::Original) | j.valve_body.kind.is(ValveBodyKind::Manual),
        |j| j.case.history.set(CaseHistory::Unknown),
        |j| j.valve_body.kind.set(ValveBodyKind::Auto),
    ),
    Step::new(
        "TD-05",
        Teardown,
        "Dye-check the case",
        "Clean the bell corners, the mount boss and the servo bores, and look for cracks with dye.",
        "A crack there grows under hard use until the case opens.",
    )
    .hurts(hazard::WASHING)
    .when(
        |j| j.case.history.is_not(CaseHistory::Original) | j.usage.raced.yes() | j.usage.kind.one_of(HEAVY_WORK),
        |j| j.usage.kind.set(UseKind::Tow),
        |j| j.usage.kind.set(UseKind::Drag),
    ),
    Step::new(
        "TD-06",
        Teardown,
        "Try every threaded hole",
        "Run the right bolt into each hole by hand, and count the holes in which it binds or wobbles.",
        "A bad thread found now gets an insert before the wash. Found later it means washing again.",
    ),
    Step::new(
        "TD-07",
        Teardown,
        "Write down what made it fail",
        "Say in one sentence what killed the unit, before any part is ordered.",
        "A rebuilt unit whose cause is still there comes back, and the shop pays.",
    )
    .hold(),
    Step::new(
        "TD-08",
        Teardown,
        "Send the findings and wait",
        "Go through the findings, send the customer what has changed with its price, and wait for the answer. Nothing \
         permanent is done before it is here.",
        "Work begun on a word over the telephone ends in a dispute about a case.",
    )
    .hold(),
];
