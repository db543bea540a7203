# mullion_embed_bench(TARGET): compiles page.css and page.js of render/bench into TARGET, as the function
# mullion::bench::page_files (page_files.h).
function(mullion_embed_bench target)
  set(folder ${CMAKE_CURRENT_SOURCE_DIR}/bench)
  mullion_embed_list(${target} page_files render/bench/page_files.h mullion::bench PageFile
                     page.css ${folder}/page.css page.js ${folder}/page.js)
endfunction()
