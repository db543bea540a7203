target_sources(${name} PRIVATE engine/layout/jobs.cpp engine/layout/wild_job.cpp)
