# Compiles text files of resources/ into the library, byte for byte.
# loadwarden_embed(<target> <function> <file>...): adds a source that defines
# `std::span<const loadwarden::EmbeddedFile> loadwarden::embedded::<function>()`; see embedded.h.
function(loadwarden_embed target function)
    loadwarden_embed_below(${target} ${function} "" ${ARGN})
endfunction()

# The same of files in folders below one: each is named by its place there.
function(loadwarden_embed_below target function folder)
    set(arrays "")
    set(entries "")
    set(index 0)
    foreach(file IN LISTS ARGN)
        if(folder STREQUAL "")
            set(path "${file}")
            get_filename_component(name "${path}" NAME)
        else()
            set(path "${folder}/${file}")
            set(name "${file}")
        endif()
        set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS "${path}")
        file(READ "${path}" hex HEX)
        string(LENGTH "${hex}" digits)
        math(EXPR bytes "${digits} / 2")
        string(REGEX REPLACE "([0-9a-f][0-9a-f])" "'\\\\x\\1'," characters "${hex}")
        string(REPLACE "'\\x0a'," "'\\x0a',\n" characters "${characters}") # a line for each line
        string(APPEND arrays "constexpr char file${index}[] = {${characters}'\\0'};\n")
        string(APPEND entries "    EmbeddedFile{\"${name}\", std::string_view(file${index}, ${bytes})},\n")
        math(EXPR index "${index} + 1")
    endforeach()
    file(CONFIGURE
        OUTPUT "${CMAKE_CURRENT_BINARY_DIR}/embedded_${function}.cpp"
        CONTENT "// Written by core/exchange/embed.cmake.
#include \"core/exchange/embedded.h\"

namespace loadwarden::embedded {

namespace {

${arrays}
constexpr EmbeddedFile files[] = {
${entries}};

} // namespace

std::span<const EmbeddedFile> ${function}()
{
    return files;
}

} // namespace loadwarden::embedded
" @ONLY)
    set_source_files_properties("${CMAKE_CURRENT_BINARY_DIR}/embedded_${function}.cpp" PROPERTIES
        SKIP_UNITY_BUILD_INCLUSION ON) # each has files of its own
    target_sources(${target} PRIVATE "${CMAKE_CURRENT_BINARY_DIR}/embedded_${function}.cpp")
endfunction()
