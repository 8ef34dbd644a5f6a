#pragma once

#include <stdexcept>

namespace loadwarden::cli {

/// The desk does not do what it was asked; what() says why and what to do, in two sentences.
class Refused : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

} // namespace loadwarden::cli
