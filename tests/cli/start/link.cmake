target_compile_definitions(${name} PRIVATE MULLION_WHOLE_PROGRAM="$<TARGET_FILE:mullion_whole>")
