//! Where a fact comes from.

use super::coded::coded;
use jiff::Timestamp;
use serde::{Deserialize, Serialize};

coded! {
    /// How the shop came to know a fact.
    Source {
        /// The customer said so; nobody has looked yet.
        CustomerSaid = "customer_said", "Customer said";
        /// Somebody looked.
        Looked = "looked", "Looked";
        /// Somebody measured.
        Measured = "measured", "Measured";
        /// Somebody measured with an instrument that was past its calibration date. So it stays.
        MeasuredPastDue = "measured_past_due", "Measured with an instrument past its calibration date";
        /// It stands on the builder's own sheet.
        BuilderSheet = "builder_sheet", "Builder's sheet";
        /// It is how this shop always does it.
        ShopSetting = "shop_setting", "Shop setting";
        /// It is a step's place in the job's log.
        Log = "log", "Step log";
        /// It follows from the job's own versions, prices and signatures.
        Papers = "papers", "The job's papers";
        /// It was worked out from other numbers; the job's history has the working.
        Computed = "computed", "Computed";
        /// It is planned; nobody has done it yet.
        Planned = "planned", "Planned, not done yet";
    }
}

impl Source {
    /// Those a person can name on a form; the others are the program's own.
    pub const TYPED: [Self; 5] =
        [Self::CustomerSaid, Self::Looked, Self::Measured, Self::BuilderSheet, Self::ShopSetting];

    /// The one with this code, when a person can name it.
    pub fn typed(code: &str) -> Option<Self> {
        Self::from_code(code).filter(|source| Self::TYPED.contains(source))
    }
}

/// Where a fact comes from, who wrote it down and when.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Origin {
    /// How it was learnt.
    pub source: Source,
    /// The name of who wrote it down. Names stand for one person in a shop for ever.
    pub by: String,
    /// When it was written down.
    pub at: Timestamp,
}
