# `cmake --build --preset release --target packages`: a .deb and a .tar.gz in build/release/packages,
# the same bytes every time. editor/desktop/pack.sh does that and examines them.

# The .tar.gz runs on other systems too, so its program brings the libraries with it that those may
# lack: from lib beside its folder bin. Never the C library, nor what belongs to the display.
add_executable(barwright_portable EXCLUDE_FROM_ALL ../main.cpp)
target_link_libraries(barwright_portable PRIVATE editor house_rules)
target_link_options( # old tags: the libraries, too, find what they need in that folder
  barwright_portable PRIVATE -static-libstdc++ -static-libgcc -Wl,--disable-new-dtags)
set_target_properties(barwright_portable PROPERTIES
                      OUTPUT_NAME barwright RUNTIME_OUTPUT_DIRECTORY portable
                      INSTALL_RPATH "$ORIGIN/../lib")
show_layers(barwright_portable engine model editor)
install(TARGETS barwright_portable
        RUNTIME_DEPENDENCIES
          PRE_INCLUDE_REGEXES "^lib(glfw|stb|freetype|png16|z|brotli(dec|common)|cairo|pixman-1|xcb-(render|shm)|Xext|Xrender|fontconfig|expat)\\.so"
          PRE_EXCLUDE_REGEXES ".*"
        RUNTIME COMPONENT portable EXCLUDE_FROM_ALL
        LIBRARY DESTINATION lib COMPONENT portable EXCLUDE_FROM_ALL)
install_notices(portable
                "libbrotli1;libcairo2;libexpat1;libfontconfig1;libfreetype6;libglfw3;libpixman-1-0;libpng16-16;libstb0;libstdc++6;\
libxcb-render0;libxcb-shm0;libxext6;libxrender1;zlib1g"
                EXCLUDE_FROM_ALL)

set(CPACK_GENERATOR DEB TGZ)
set(CPACK_PACKAGE_NAME barwright)
set(CPACK_PACKAGE_VENDOR "The Barwright developers")
set(CPACK_PACKAGE_CONTACT "The Barwright developers <developers@example.com>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "modeller of cabinet skeletons made of aluminium bar")
set(CPACK_PACKAGE_DESCRIPTION
    "Barwright is for owners who convert a van and build its cabinets as skeletons
of aluminium angle, flat bar and channel: sawn to length, drilled and riveted.
You state the skeleton by its dimensions; it works out every piece, how the
pieces lap, where each hole goes and which rivet fits, shows it in three
dimensions, and writes the schedules to saw, drill and rivet from.")
set(CPACK_PACKAGE_FILE_NAME barwright-${PROJECT_VERSION}-linux-${CMAKE_SYSTEM_PROCESSOR})
set(CPACK_PACKAGE_DIRECTORY ${PROJECT_BINARY_DIR}/packages)
set(CPACK_RESOURCE_FILE_LICENSE ${PROJECT_SOURCE_DIR}/LICENSE)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS ${CMAKE_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS})
set(CPACK_STRIP_FILES ON)
set(CPACK_VERBATIM_VARIABLES ON)
set(CPACK_BUILT_IN ${PROJECT_BINARY_DIR})
get_property(CPACK_MISSING_NOTICES GLOBAL PROPERTY MISSING_NOTICES)
set(CPACK_PROJECT_CONFIG_FILE ${CMAKE_CURRENT_SOURCE_DIR}/by_generator.cmake)
set(CPACK_POST_BUILD_SCRIPTS ${CMAKE_CURRENT_SOURCE_DIR}/repack.cmake)

set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION graphics)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PACKAGE_DEPENDS libgl1) # loaded at run time, so that SHLIBDEPS does not see it
set(CPACK_DEBIAN_PACKAGE_CONTROL_STRICT_PERMISSION ON)
include(CPack)

if(NOT DEFINED ENV{SOURCE_DATE_EPOCH})
  set(date_of_files ${CMAKE_COMMAND} -E env SOURCE_DATE_EPOCH=${RELEASE_EPOCH})
endif()
add_custom_target(
  packages
  COMMAND ${date_of_files} ${CMAKE_CPACK_COMMAND} --config ${PROJECT_BINARY_DIR}/CPackConfig.cmake
  DEPENDS barwright barwright_portable
  WORKING_DIRECTORY ${PROJECT_BINARY_DIR}
  USES_TERMINAL VERBATIM)
