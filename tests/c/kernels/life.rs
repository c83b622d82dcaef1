//! The life of an edge.

use turnwright::ffi::{
    tw_cutting_speed, tw_fastest_life, tw_fastest_life_column, tw_life, tw_life_constant,
    tw_life_constant_through, tw_life_constant_through_column, tw_life_exponent, tw_time,
};
use turnwright::physics::wear::{self, LifeLaw};
use turnwright::{CuttingSpeed, Duration, LifeConstant, LifeExponent, Quantity, ToolLife};

kernels! {
    "fastest_life" tw_fastest_life tw_fastest_life_column
        [constant tw_life_constant m_per_min LifeConstant 20.0 1000.0, exponent tw_life_exponent ratio LifeExponent 0.1 1.2, change_time tw_time s Duration 1.0 600.0]
        [life tw_life s ToolLife, cutting_speed tw_cutting_speed m_per_min CuttingSpeed]
        {

let found = wear::fastest_life(LifeLaw::new(constant, exponent), change_time).ok()?;
Some([found.life.trade(), found.cutting_speed.trade()])
        };
    "life_constant_through" tw_life_constant_through tw_life_constant_through_column
        [cutting_speed tw_cutting_speed m_per_min CuttingSpeed 10.0 400.0, life tw_life s ToolLife 30.0 20000.0, exponent tw_life_exponent ratio LifeExponent 0.1 1.2]
        [constant tw_life_constant m_per_min LifeConstant]
        {

let found = LifeLaw::through(cutting_speed, life, exponent).ok()?;
Some([found.constant().trade()])
        };
}
