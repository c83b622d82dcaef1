# find_package(turnwright) finds this file under the prefix of `cargo cinstall`. It makes
#
#   turnwright::turnwright         the shared library, where it is installed, else the static one
#   turnwright::turnwright_static  the static library, with what it is linked with, where it is installed
#
# both with the folder of turnwright.h and turnwright.hpp.

get_filename_component(_turnwright_prefix "${CMAKE_CURRENT_LIST_DIR}/../../.." ABSOLUTE)
find_path(TURNWRIGHT_INCLUDE_DIR turnwright.h
    PATHS "${_turnwright_prefix}/include" NO_DEFAULT_PATH)

set(_turnwright_places "${_turnwright_prefix}")
set(_turnwright_suffixes lib lib64 bin)
if(CMAKE_LIBRARY_ARCHITECTURE)
    list(APPEND _turnwright_suffixes "lib/${CMAKE_LIBRARY_ARCHITECTURE}")
endif()
find_library(TURNWRIGHT_SHARED_LIBRARY
    NAMES "${CMAKE_SHARED_LIBRARY_PREFIX}turnwright${CMAKE_SHARED_LIBRARY_SUFFIX}" turnwright.dll.lib
    PATHS ${_turnwright_places} PATH_SUFFIXES ${_turnwright_suffixes} NO_DEFAULT_PATH)
find_library(TURNWRIGHT_STATIC_LIBRARY
    NAMES "${CMAKE_STATIC_LIBRARY_PREFIX}turnwright${CMAKE_STATIC_LIBRARY_SUFFIX}"
    PATHS ${_turnwright_places} PATH_SUFFIXES ${_turnwright_suffixes} NO_DEFAULT_PATH)
mark_as_advanced(TURNWRIGHT_INCLUDE_DIR TURNWRIGHT_SHARED_LIBRARY TURNWRIGHT_STATIC_LIBRARY)

if(NOT TURNWRIGHT_INCLUDE_DIR OR NOT (TURNWRIGHT_SHARED_LIBRARY OR TURNWRIGHT_STATIC_LIBRARY))
    set(turnwright_FOUND FALSE)
    set(turnwright_NOT_FOUND_MESSAGE
        "turnwright.h or its library is not under ${_turnwright_prefix}; install with cargo cinstall")
    return()
endif()

if(TURNWRIGHT_STATIC_LIBRARY AND NOT TARGET turnwright::turnwright_static)
    add_library(turnwright::turnwright_static STATIC IMPORTED)
    set_target_properties(turnwright::turnwright_static PROPERTIES
        IMPORTED_LOCATION "${TURNWRIGHT_STATIC_LIBRARY}"
        INTERFACE_INCLUDE_DIRECTORIES "${TURNWRIGHT_INCLUDE_DIR}")
    # What Rust's standard library is linked with; the first page of the header has the same list.
    if(WIN32)
        set_property(TARGET turnwright::turnwright_static PROPERTY
            INTERFACE_LINK_LIBRARIES ws2_32 userenv ntdll bcrypt advapi32)
    elseif(APPLE)
        set_property(TARGET turnwright::turnwright_static PROPERTY
            INTERFACE_LINK_LIBRARIES iconv System)
    else()
        set_property(TARGET turnwright::turnwright_static PROPERTY
            INTERFACE_LINK_LIBRARIES pthread dl m)
    endif()
endif()

if(NOT TARGET turnwright::turnwright)
    if(TURNWRIGHT_SHARED_LIBRARY)
        add_library(turnwright::turnwright SHARED IMPORTED)
        set_target_properties(turnwright::turnwright PROPERTIES
            INTERFACE_INCLUDE_DIRECTORIES "${TURNWRIGHT_INCLUDE_DIR}")
        if(WIN32)
            get_filename_component(_turnwright_bin "${_turnwright_prefix}/bin/turnwright.dll" ABSOLUTE)
            set_target_properties(turnwright::turnwright PROPERTIES
                IMPORTED_IMPLIB "${TURNWRIGHT_SHARED_LIBRARY}"
                IMPORTED_LOCATION "${_turnwright_bin}")
        else()
            set_target_properties(turnwright::turnwright PROPERTIES
                IMPORTED_LOCATION "${TURNWRIGHT_SHARED_LIBRARY}")
        endif()
    else()
        add_library(turnwright::turnwright INTERFACE IMPORTED)
        set_property(TARGET turnwright::turnwright PROPERTY
            INTERFACE_LINK_LIBRARIES turnwright::turnwright_static)
    endif()
endif()

set(turnwright_FOUND TRUE)
unset(_turnwright_prefix)
unset(_turnwright_places)
unset(_turnwright_suffixes)
