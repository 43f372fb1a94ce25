# Run by cpack after it has packed. In an archive it leaves files in the order in which the disk happens
# to list them, and with the name of whoever packs; a .deb has neither.
if(NOT CPACK_GENERATOR STREQUAL "TGZ")
  return()
endif()
if(DEFINED ENV{SOURCE_DATE_EPOCH})
  set(date_of_files --mtime=@$ENV{SOURCE_DATE_EPOCH})
endif()
foreach(archive IN LISTS CPACK_PACKAGE_FILES)
  set(unpacked ${archive}.unpacked)
  file(ARCHIVE_EXTRACT INPUT ${archive} DESTINATION ${unpacked})
  execute_process(
    COMMAND tar --create --format=ustar --sort=name --owner=0 --group=0 --numeric-owner ${date_of_files}
            --directory=${unpacked} ${CPACK_PACKAGE_FILE_NAME}
    COMMAND gzip -9n
    OUTPUT_FILE ${archive} COMMAND_ERROR_IS_FATAL ANY)
  file(REMOVE_RECURSE ${unpacked})
endforeach()
