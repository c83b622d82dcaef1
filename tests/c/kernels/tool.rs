//! A tool off the height of the centres, and how far tools give way.

use turnwright::ffi::{
    tw_boring_bar_deflection, tw_boring_bar_deflection_column, tw_deflection, tw_diameter,
    tw_diameter_error, tw_main_force, tw_overhang, tw_passive_force, tw_pip_diameter,
    tw_pip_diameter_column, tw_rake_angle, tw_rake_change, tw_rake_change_column,
    tw_shank_deflection, tw_shank_deflection_column, tw_shank_size, tw_taper_error,
    tw_taper_error_column, tw_tool_height, tw_travel, tw_turned_diameter,
    tw_turned_diameter_column, tw_youngs_modulus,
};
use turnwright::physics::facing;
use turnwright::physics::{tool_height, tool_overhang};
use turnwright::{
    Deflection, Diameter, DiameterError, MainForce, Overhang, PassiveForce, Quantity, RakeAngle,
    ShankSize, ToolHeight, Travel, YoungsModulus,
};

kernels! {
    "turned_diameter" tw_turned_diameter tw_turned_diameter_column
        [zeroed_at tw_diameter mm Diameter 5.0 300.0, moved_in tw_travel mm Travel 0.01 50.0, tool_height tw_tool_height mm ToolHeight 0.01 5.0]
        [diameter tw_diameter mm Diameter]
        {

let found = tool_height::turned_diameter(zeroed_at, moved_in, tool_height).ok()?;
Some([found.trade()])
        };
    "taper_error" tw_taper_error tw_taper_error_column
        [large tw_diameter mm Diameter 5.0 300.0, small tw_diameter mm Diameter 5.0 300.0, tool_height tw_tool_height mm ToolHeight 0.01 5.0]
        [diameter_error tw_diameter_error mm DiameterError]
        {

let found = tool_height::taper_error(large, small, tool_height).ok()?;
Some([found.trade()])
        };
    "rake_change" tw_rake_change tw_rake_change_column
        [diameter tw_diameter mm Diameter 5.0 300.0, tool_height tw_tool_height mm ToolHeight 0.01 5.0]
        [rake_angle tw_rake_angle deg RakeAngle]
        {

let found = tool_height::rake_change(diameter, tool_height).ok()?;
Some([found.trade()])
        };
    "pip_diameter" tw_pip_diameter tw_pip_diameter_column
        [tool_height tw_tool_height mm ToolHeight 0.01 5.0]
        [diameter tw_diameter mm Diameter]
        {
let found = facing::pip_diameter(tool_height);
Some([found.map_or(0.0, Diameter::mm)])
        };
    "shank_deflection" tw_shank_deflection tw_shank_deflection_column
        [main_force tw_main_force n MainForce 10.0 3000.0, overhang tw_overhang mm Overhang 1.0 900.0, shank_width tw_shank_size mm ShankSize 5.0 50.0, shank_height tw_shank_size mm ShankSize 5.0 50.0, youngs_modulus tw_youngs_modulus gpa YoungsModulus 3.0 400.0]
        [deflection tw_deflection mm Deflection]
        {

let found = tool_overhang::shank_deflection(main_force, overhang, shank_width, shank_height, youngs_modulus);
Some([found.trade()])
        };
    "boring_bar_deflection" tw_boring_bar_deflection tw_boring_bar_deflection_column
        [passive_force tw_passive_force n PassiveForce 10.0 3000.0, overhang tw_overhang mm Overhang 1.0 900.0, bar_diameter tw_diameter mm Diameter 5.0 300.0, youngs_modulus tw_youngs_modulus gpa YoungsModulus 3.0 400.0]
        [deflection tw_deflection mm Deflection]
        {

let found = tool_overhang::boring_bar_deflection(passive_force, overhang, bar_diameter, youngs_modulus);
Some([found.trade()])
        };
}
