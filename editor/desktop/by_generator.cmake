# Read by cpack, once for each kind of package.
if(CPACK_MISSING_NOTICES)
  message(FATAL_ERROR "A package must carry the notices of what is built into it. There is no file "
                      "${CPACK_MISSING_NOTICES}: pack on Debian, where they are installed")
endif()

# The .tar.gz gets the program that brings its libraries.
if(CPACK_GENERATOR STREQUAL "TGZ")
  set(CPACK_INSTALL_CMAKE_PROJECTS
      "${CPACK_BUILT_IN};barwright;desktop;/;${CPACK_BUILT_IN};barwright;portable;/")
endif()
