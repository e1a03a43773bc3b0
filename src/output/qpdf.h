#pragma once
// libqpdf's headers, as every compiler here takes them. Include this instead of them.

// libqpdf 11 asks its users to say that they use none of its old pointers.
#define POINTERHOLDER_TRANSITION 4
#if defined(__clang__) && __clang_major__ < 16
// JSON.hh holds a vector of a class not yet complete, which clang 14 refuses as C++20 with libstdc++ 12's vector. The
// other headers need no more of JSON than its name.
#define JSON_HH
class JSON;
#endif

#include <qpdf/Buffer.hh>
#include <qpdf/Pipeline.hh>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFExc.hh>
#include <qpdf/QPDFObjectHandle.hh>
#include <qpdf/QPDFWriter.hh>
