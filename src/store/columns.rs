//! How the program's own types stand in columns: codes as text, documents as jsonb.

use crate::ticket::{
    Act, Answer, Channel, Edit, Gate, Happening, Judgement, Purpose, Quoted, Role, Stage, TicketFacts, WaitsFor, Words,
};
use sqlx::encode::IsNull;
use sqlx::error::BoxDynError;
use sqlx::postgres::{PgArgumentBuffer, PgTypeInfo, PgValueRef};
use sqlx::types::Json;
use sqlx::{Decode, Encode, Postgres, Type};

/// A moment as the database hands it over; turns into [`jiff::Timestamp`].
pub(super) type At = jiff_sqlx::Timestamp;
/// A calendar day as the database hands it over; turns into [`jiff::civil::Date`].
pub(super) type Day = jiff_sqlx::Date;

macro_rules! codes {
    ($($name:ident),+) => {$(
        impl Type<Postgres> for $name {
            fn type_info() -> PgTypeInfo {
                <&str as Type<Postgres>>::type_info()
            }
            fn compatible(column: &PgTypeInfo) -> bool {
                <&str as Type<Postgres>>::compatible(column)
            }
        }
        impl<'r> Decode<'r, Postgres> for $name {
            fn decode(value: PgValueRef<'r>) -> Result<Self, BoxDynError> {
                let code = <&str as Decode<'r, Postgres>>::decode(value)?;
                Self::from_code(code).ok_or_else(|| format!("{code} is no {}", stringify!($name)).into())
            }
        }
        impl Encode<'_, Postgres> for $name {
            fn encode_by_ref(&self, buffer: &mut PgArgumentBuffer) -> Result<IsNull, BoxDynError> {
                <&str as Encode<'_, Postgres>>::encode_by_ref(&self.code(), buffer)
            }
        }
    )+};
}
codes!(Act, Answer, Channel, Gate, Purpose, Role, Stage, WaitsFor);

macro_rules! documents {
    ($($name:ident),+) => {$(
        impl Type<Postgres> for $name {
            fn type_info() -> PgTypeInfo {
                <Json<Self> as Type<Postgres>>::type_info()
            }
            fn compatible(column: &PgTypeInfo) -> bool {
                <Json<Self> as Type<Postgres>>::compatible(column)
            }
        }
        impl<'r> Decode<'r, Postgres> for $name {
            fn decode(value: PgValueRef<'r>) -> Result<Self, BoxDynError> {
                <Json<Self> as Decode<'r, Postgres>>::decode(value).map(|json| json.0)
            }
        }
        impl Encode<'_, Postgres> for $name {
            fn encode_by_ref(&self, buffer: &mut PgArgumentBuffer) -> Result<IsNull, BoxDynError> {
                Json(self).encode_by_ref(buffer)
            }
        }
    )+};
}
documents!(Edit, Happening, Judgement, Quoted, TicketFacts, Words);
