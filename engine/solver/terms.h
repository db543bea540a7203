#pragma once

// The terms of a sum: a list that keeps the first few without asking for memory, since most sums of
// a layout are short. It is used like a std::vector, in whose place it saves an eighth of a layout's
// instructions (counted for 12 to 200 openings).

#include <algorithm>
#include <compare>
#include <cstddef>
#include <cstdint>
#include <initializer_list>
#include <memory>
#include <utility>

#include "engine/solver/rational.h"

namespace mullion::solver {

struct Term {
  int variable;
  Rational coefficient;  // never zero in a sum

  friend auto operator<=>(const Term&, const Term&) = default;
};

class Terms {
 public:
  using iterator = Term*;
  using const_iterator = const Term*;
  using value_type = Term;

  Terms() = default;
  Terms(std::initializer_list<Term> terms) : Terms(terms.begin(), terms.end()) {}
  Terms(const Term* first, const Term* last) {
    reserve(static_cast<std::size_t>(last - first));
    size_ = static_cast<std::uint32_t>(std::uninitialized_copy(first, last, data_) - data_);
  }
  Terms(const Terms& other) : Terms(other.begin(), other.end()) {}
  Terms(Terms&& other) noexcept { take(other); }
  Terms& operator=(const Terms& other) { return *this = Terms(other); }
  Terms& operator=(Terms&& other) noexcept {
    if (this == &other) return *this;
    drop();
    take(other);
    return *this;
  }
  ~Terms() { drop(); }

  const Term* begin() const { return data_; }
  const Term* end() const { return data_ + size_; }
  Term* begin() { return data_; }
  Term* end() { return data_ + size_; }
  std::size_t size() const { return size_; }
  bool empty() const { return size_ == 0; }
  const Term& operator[](std::size_t i) const { return data_[i]; }
  const Term& front() const { return data_[0]; }
  Term& back() { return data_[size_ - 1]; }

  void reserve(std::size_t count) {
    if (count > capacity_) move_to_room_for(count);
  }
  void push_back(Term term) {
    if (size_ == capacity_) move_to_room_for(std::size_t{2} * capacity_);
    std::construct_at(data_ + size_++, std::move(term));
  }
  void pop_back() { std::destroy_at(data_ + --size_); }

  // The shorter precedes.
  friend std::strong_ordering operator<=>(const Terms& a, const Terms& b) {
    if (a.size_ != b.size_) return a.size_ <=> b.size_;
    return std::lexicographical_compare_three_way(a.begin(), a.end(), b.begin(), b.end());
  }
  friend bool operator==(const Terms& a, const Terms& b) { return (a <=> b) == 0; }

 private:
  static constexpr std::uint32_t few = 4;

  Term* own() { return reinterpret_cast<Term*>(room_); }
  bool is_own() const { return capacity_ == few; }

  void move_to_room_for(std::size_t count) {
    Term* data = std::allocator<Term>().allocate(count);
    std::uninitialized_move(begin(), end(), data);
    drop();
    data_ = data;
    capacity_ = static_cast<std::uint32_t>(count);
  }
  // Leaves nothing to be used but for take() and move_to_room_for().
  void drop() {
    std::destroy(begin(), end());
    if (!is_own()) std::allocator<Term>().deallocate(data_, capacity_);
  }
  void take(Terms& other) {
    if (other.is_own()) {
      data_ = own();
      capacity_ = few;
      size_ = other.size_;
      std::uninitialized_move(other.begin(), other.end(), data_);
      std::destroy(other.begin(), other.end());
      other.size_ = 0;
      return;
    }
    data_ = std::exchange(other.data_, other.own());
    capacity_ = std::exchange(other.capacity_, few);
    size_ = std::exchange(other.size_, 0);
  }

  alignas(Term) std::byte room_[few * sizeof(Term)];
  Term* data_ = own();
  std::uint32_t size_ = 0;
  std::uint32_t capacity_ = few;
};

}  // namespace mullion::solver
