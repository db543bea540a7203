#include "cli/page/deadlines.h"

#include <event2/buffer.h>
#include <event2/bufferevent.h>
#include <sys/socket.h>
#include <sys/stat.h>

namespace mullion::cli::page {
namespace {

// Of an open socket, which no other has; 0 where none is open.
ino_t inode_of(int socket) {
  struct stat status {};
  return ::fstat(socket, &status) == 0 ? status.st_ino : 0;
}

}  // namespace

void Deadlines::watch(bufferevent* connection) {
  evbuffer* const buffer = bufferevent_get_input(connection);
  watched_[buffer] = {connection, {}, -1, 0};
  evbuffer_add_cb(buffer, on_bytes, this);
}

void Deadlines::on_bytes(evbuffer* buffer, const evbuffer_cb_info* info, void* self) {
  Watched& watched = static_cast<Deadlines*>(self)->watched_[buffer];
  if (info->n_added == 0 || watched.begun || watched.connection == nullptr) return;
  watched.begun = Clock::now();
  watched.socket = bufferevent_getfd(watched.connection);
  watched.inode = inode_of(watched.socket);
}

void Deadlines::is_complete(bufferevent* connection) {
  const auto found = watched_.find(bufferevent_get_input(connection));
  if (found != watched_.end()) found->second.begun.reset();
}

void Deadlines::look() {
  const Clock::time_point now = Clock::now();
  for (auto& [buffer, watched] : watched_) {
    if (!watched.begun || now - *watched.begun < most_) continue;
    if (inode_of(watched.socket) == watched.inode) ::shutdown(watched.socket, SHUT_RDWR);
    watched.begun.reset();
  }
}

}  // namespace mullion::cli::page
