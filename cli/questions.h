#pragma once

// Questions on a terminal: asked on standard error, answered line by line on standard input.

#include <functional>
#include <optional>
#include <string>

namespace mullion::cli {

// A person can be asked: standard input and standard error are terminals.
bool can_ask();

// What is wrong with an answer, as a sentence; empty where it was taken.
using Take = std::function<std::string(const std::string& answer)>;

// Asks until an answer is taken. An empty one stands for `usual`. False where the input ended.
bool ask(const std::string& question, const std::string& usual, const Take& take);

}  // namespace mullion::cli
