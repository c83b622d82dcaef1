//! Chained setters of optional fields, written once for every item that has them.

/// `with_x(x)` for each optional field.
macro_rules! setters {
    ($( $(#[$doc:meta])* $with:ident $name:ident: $t:ty; )*) => { $(
        $(#[$doc])*
        #[must_use]
        pub fn $with(mut self, $name: $t) -> Self {
            self.$name = Some($name);
            self
        }
    )* };
}
pub(crate) use setters;

/// `with_x(x)` and the reader `x()` for each optional field; the reader hands out a copy.
macro_rules! setters_and_readers {
    ($( $(#[$doc:meta])* $with:ident $name:ident: $t:ty; )*) => {
        $crate::shop::setters! { $( $(#[$doc])* $with $name: $t; )* }
        $(
            $(#[$doc])*
            #[must_use]
            pub fn $name(&self) -> Option<$t> {
                self.$name
            }
        )*
    };
}
pub(crate) use setters_and_readers;
