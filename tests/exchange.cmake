# The published schema against the program, as an outside check.
if(TARGET loadwarden-cli AND LOADWARDEN_UNIT_TESTS)
    add_test(NAME schema_agreement
        COMMAND "${LOADWARDEN_PYTHON}" "${CMAKE_CURRENT_LIST_DIR}/schema_agreement_test.py"
                "$<TARGET_FILE:loadwarden-cli>" "${PROJECT_SOURCE_DIR}")
    set_tests_properties(schema_agreement PROPERTIES LABELS unit TIMEOUT 600)
endif()
