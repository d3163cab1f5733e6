#include "scenarios/io/journal.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <boost/crc.hpp>
#include <cerrno>

#include "scenarios/io/safe_file.h"

namespace spurwright::io {
namespace {

constexpr std::size_t head_bytes = 8;

// CRC-32C (Castagnoli): polynomial 0x1EDC6F41, reflected, as RFC 3720 appendix B.4 gives it with its test vectors.
std::uint32_t checksum(std::string_view bytes) {
    boost::crc_optimal<32, 0x1EDC6F41, 0xFFFFFFFF, 0xFFFFFFFF, true, true> crc;
    crc.process_bytes(bytes.data(), bytes.size());
    return crc.checksum();
}

void put_number(std::string& out, std::uint32_t number) {
    for (int shift = 0; shift < 32; shift += 8) out.push_back(static_cast<char>((number >> shift) & 0xff));
}

std::uint32_t number_at(std::string_view bytes, std::size_t at) {
    std::uint32_t number = 0;
    for (std::size_t i = 4; i-- > 0;) number = number << 8 | static_cast<unsigned char>(bytes[at + i]);
    return number;
}

void sync_folder_of(const std::string& path) {
    const auto slash = path.rfind('/');
    const std::string folder = slash == std::string::npos ? "." : slash == 0 ? "/" : path.substr(0, slash);
    const OpenFile file(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
    if (file) ::fsync(file.file());  // the new name itself; some file systems cannot
}

}  // namespace

std::string entry_bytes(std::string_view payload) {
    std::string out;
    put_number(out, static_cast<std::uint32_t>(payload.size()));
    put_number(out, checksum(payload));
    out += payload;
    return out;
}

JournalEntries read_entries(std::string_view bytes) {
    JournalEntries found;
    while (bytes.size() - found.good_bytes >= head_bytes) {
        const std::size_t length = number_at(bytes, found.good_bytes), begins = found.good_bytes + head_bytes;
        if (length > longest_entry || bytes.size() - begins < length) break;
        const std::string_view payload = bytes.substr(begins, length);
        if (checksum(payload) != number_at(bytes, found.good_bytes + 4)) break;
        found.entries.emplace_back(payload);
        found.good_bytes = begins + length;
    }
    return found;
}

Result<Journal> Journal::open(const std::string& path) {
    std::string bytes;
    const bool is_new = !is_there(path);
    if (!is_new) {
        auto read = read_file(path, largest_journal);
        if (!read) return failure(std::move(read.error()));
        bytes = *std::move(read);
    }
    JournalEntries found = read_entries(bytes);
    if (found.good_bytes < bytes.size())
        if (auto aside = write_file(path + ".tail", std::string_view(bytes).substr(found.good_bytes)); !aside) return failure(std::move(aside.error()));
    OpenFile file(::open(path.c_str(), O_WRONLY | O_CREAT | O_CLOEXEC, 0666));
    if (!file) return failure(unwritable(path, errno));
    if (::ftruncate(file.file(), static_cast<off_t>(found.good_bytes)) != 0 || ::fsync(file.file()) != 0) return failure(unwritable(path, errno));
    if (is_new) sync_folder_of(path);
    Journal journal(path, std::move(file));
    journal.entries_ = std::move(found.entries);
    journal.size_ = found.good_bytes;
    journal.had_tail_ = found.good_bytes < bytes.size();
    return journal;
}

Result<void> Journal::append(std::string_view payload) {
    const std::string entry = entry_bytes(payload);
    // From the end of what is whole: what a failed append left half-written is written over.
    const bool whole = ::lseek(file_.file(), static_cast<off_t>(size_), SEEK_SET) >= 0 && write_all(file_.file(), entry) && ::fsync(file_.file()) == 0;
    if (!whole) {
        const int code = errno;
        if (::ftruncate(file_.file(), static_cast<off_t>(size_)) != 0) errno = code;
        return failure(unwritable(path_, code));
    }
    size_ += entry.size();
    entries_.emplace_back(payload);
    return {};
}

}  // namespace spurwright::io
