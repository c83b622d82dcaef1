# The version is that of the header beside which this file is installed. Before 1.0 a new MINOR may
# change a call, from 1.0 only a new MAJOR.

get_filename_component(_turnwright_header "${CMAKE_CURRENT_LIST_DIR}/../../../include/turnwright.h" ABSOLUTE)
file(STRINGS "${_turnwright_header}" _turnwright_line REGEX "^#define TW_VERSION \"")
string(REGEX REPLACE ".*\"([0-9.]+)\".*" "\\1" PACKAGE_VERSION "${_turnwright_line}")

set(PACKAGE_VERSION_COMPATIBLE FALSE)
set(PACKAGE_VERSION_EXACT FALSE)
if(PACKAGE_FIND_VERSION VERSION_EQUAL PACKAGE_VERSION)
    set(PACKAGE_VERSION_COMPATIBLE TRUE)
    set(PACKAGE_VERSION_EXACT TRUE)
elseif(PACKAGE_FIND_VERSION VERSION_LESS PACKAGE_VERSION)
    string(REGEX MATCH "^[0-9]+\\.[0-9]+" _turnwright_minor "${PACKAGE_VERSION}")
    string(REGEX MATCH "^[0-9]+" _turnwright_major "${PACKAGE_VERSION}")
    if(_turnwright_major EQUAL 0)
        set(_turnwright_wanted "${PACKAGE_FIND_VERSION_MAJOR}.${PACKAGE_FIND_VERSION_MINOR}")
        if(_turnwright_wanted VERSION_EQUAL _turnwright_minor)
            set(PACKAGE_VERSION_COMPATIBLE TRUE)
        endif()
    elseif(PACKAGE_FIND_VERSION_MAJOR EQUAL _turnwright_major)
        set(PACKAGE_VERSION_COMPATIBLE TRUE)
    endif()
endif()

# A library for another width of pointers is none.
if(CMAKE_SIZEOF_VOID_P AND NOT CMAKE_SIZEOF_VOID_P EQUAL 8)
    set(PACKAGE_VERSION_UNSUITABLE TRUE)
endif()
