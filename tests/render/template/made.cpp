#include "tests/render/template/made.h"

#include <algorithm>
#include <filesystem>
#include <stdexcept>

#include "engine/job/read.h"
#include "tests/oracle/program.h"

namespace made {

using namespace mullion;

std::vector<std::string> all_jobs() {
  std::vector<std::string> jobs{oracle::test_data("worked/shapes.xml"),
                                oracle::test_data("worked/asymmetric.xml"),
                                oracle::test_data("jobs/stepped_window.xml")};
  for (const auto& entry : std::filesystem::directory_iterator(oracle::gallery(""))) {
    const std::string path = entry.path().string();
    if (path.ends_with(".xml") && oracle::read_file(path).find("<job ") != std::string::npos) {
      jobs.push_back(path);
    }
  }
  std::sort(jobs.begin(), jobs.end());
  return jobs;
}

std::vector<std::string> some_jobs() {
  return {oracle::test_data("worked/shapes.xml"),       oracle::test_data("worked/asymmetric.xml"),
          oracle::test_data("jobs/stepped_window.xml"), oracle::gallery("double-mat.xml"),
          oracle::gallery("engraved-house.xml"),        oracle::gallery("title-and-three.xml")};
}

Mat mat_of(const std::string& path) {
  const Result<Job> job = read_job(path);
  if (!job) throw std::runtime_error(path + " cannot be read");
  const Result<Layout> layout = lay_out(*job);
  if (!layout) throw std::runtime_error(path + " cannot be laid out");
  const Result<Mat> mat = build_mat(*job, *layout);
  if (!mat) throw std::runtime_error(path + " makes no mat");
  return *mat;
}

std::string template_of(const std::string& job, const std::string& output,
                        const std::vector<std::string>& words) {
  std::vector<std::string> all{"template", job, "-o", output};
  all.insert(all.end(), words.begin(), words.end());
  const oracle::Run run = oracle::mullion(all);
  if (run.status != 0) throw std::runtime_error(job + ": " + run.err);
  return output;
}

}  // namespace made
