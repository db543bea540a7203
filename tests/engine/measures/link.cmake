target_sources(${name} PRIVATE engine/layout/jobs.cpp engine/layout/languages.cpp engine/layout/random_job.cpp engine/layout/wild_job.cpp)
