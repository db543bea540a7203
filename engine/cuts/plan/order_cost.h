#pragma once

// The cost model of order.h in whole units: 4096 to the second. What is below a second breaks ties:
// it counts how often a shorter cut follows a longer one.

#include <set>

#include "engine/cuts/plan/order.h"

namespace mullion {

using Units = std::int64_t;
inline constexpr Units units_per_second = 4096;

class OrderCost {
 public:
  OrderCost(const std::vector<OrderItem>& items, const HandlingTimes& times, int quantity);

  Units first(int item) const;
  Units step(int from, int to) const { return steps_[index(from, to)]; }
  // The cut itself, whatever was cut before.
  Units own(int item) const { return own_[static_cast<std::size_t>(item)]; }
  Units pencil_line() const { return pencil_; }
  // No order of these items costs less.
  Units floor() const;

 private:
  std::size_t index(int from, int to) const {
    return static_cast<std::size_t>(from) * items_.size() + static_cast<std::size_t>(to);
  }
  Units compute_step(const OrderItem& from, const OrderItem& to) const;
  Units compute_own(const OrderItem& item) const;
  Units seconds(std::int64_t each) const { return each * units_per_second; }
  Units for_all(std::int64_t each) const { return each * quantity_ * units_per_second; }

  const std::vector<OrderItem>& items_;
  const HandlingTimes& times_;
  std::int64_t quantity_;
  Units pencil_;
  std::vector<Units> own_, steps_;
};

}  // namespace mullion
