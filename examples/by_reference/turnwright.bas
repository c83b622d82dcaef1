' turnwright from Visual Basic and its relatives, 64 bit: one row by reference.
'
' Such a language hands over plain doubles and whole numbers by reference, and no struct by value.
' So it asks the column calls of the C interface with one row: a column tells where a double lies.
'
'   cargo build --release --features capi      leaves turnwright.dll in target\release
'
' Put turnwright.dll beside the program or in a folder of PATH, and this file into the project.
'
' What C calls        is here       because
'   const void *        LongPtr       an address: VarPtr(x)
'   size_t              LongPtr       of the same width; unsigned, but no count comes near its sign
'   int32_t             Long          32 bit; Integer has only 16
'   uint32_t            Long          the numbers that stand there are small
'   uint64_t            LongLong      32-bit programs have none, and other strides: use 64 bit
'   char [64]           Byte array    inside of the Type, with its bounds, so that it lies there
'   tw_status           Long          0 is done, all else is a failure
' A Type is passed ByRef, which is the address that C wants. Where C allows NULL, declare the argument
' ByVal As LongPtr and pass 0. Types hold 8-byte members on multiples of 8, as C does.
'
' declarations.py turns this file into a header, and by_reference.c calls through it; the check builds
' and runs that, so that what stands here is what the library takes.
'
' A finding of a program is advice: the machine's manual, the rules of the shop and what a qualified
' person says come first.
Option Explicit

Public Const TW_OK As Long = 0
Public Const TW_ROWS_BAD As Long = 60
Public Const TW_QUANTITY_DIAMETER As Long = 1
Public Const TW_QUANTITY_CUTTING_SPEED As Long = 8
Public Const TW_QUANTITY_SPINDLE_SPEED As Long = 9
Public Const TW_UNIT_LENGTH_MILLIMETER As Long = 100
Public Const TW_UNIT_LENGTH_INCH As Long = 104
Public Const TW_UNIT_CUTTING_SPEED_METER_PER_MINUTE As Long = 500
Public Const TW_UNIT_CUTTING_SPEED_FOOT_PER_MINUTE As Long = 502
Public Const TW_UNIT_SPINDLE_SPEED_REVOLUTION_PER_MINUTE As Long = 600

' tw_column and tw_out_column, which are laid out alike.
Public Type TwColumn
    Data As LongPtr
    StrideBytes As LongPtr
    Count As LongPtr
    Quantity As Long
    Unit As Long
End Type

' tw_error. Set StructSize to LenB of it before its first use.
Public Type TwError
    StructSize As Long
    Status As Long
    Row As LongLong
    Field(0 To 63) As Byte
    Given(0 To 63) As Byte
    Expected(0 To 127) As Byte
    Remedy(0 To 191) As Byte
    FieldLength As Long
    GivenLength As Long
    ExpectedLength As Long
    RemedyLength As Long
    RowsBad As LongLong
    RowStatus As Long
    Reserved(0 To 4) As Long
End Type

Public Declare PtrSafe Function tw_spindle_speed_for_column Lib "turnwright" ( _
    ByRef CuttingSpeed As TwColumn, _
    ByRef Diameter As TwColumn, _
    ByRef SpindleSpeed As TwColumn, _
    ByRef RowStatus As Long, _
    ByVal RowStatusStrideBytes As LongPtr, _
    ByRef Detail As TwError) As Long

' One double as a column: of one row, whose next one would lie 8 bytes on.
Public Function OneDouble(ByRef Value As Double, ByVal Quantity As Long, ByVal Unit As Long) As TwColumn
    OneDouble.Data = VarPtr(Value)
    OneDouble.StrideBytes = 8
    OneDouble.Count = 1
    OneDouble.Quantity = Quantity
    OneDouble.Unit = Unit
End Function

' Revolutions per minute; an error with the library's words for what is no speed or no diameter.
Public Function SpindleSpeed(ByVal MetersPerMinute As Double, ByVal Millimeters As Double) As Double
    Dim Found As Double
    Dim RowStatus As Long
    Dim Detail As TwError
    Dim V As TwColumn, D As TwColumn, N As TwColumn
    Detail.StructSize = LenB(Detail)
    V = OneDouble(MetersPerMinute, TW_QUANTITY_CUTTING_SPEED, TW_UNIT_CUTTING_SPEED_METER_PER_MINUTE)
    D = OneDouble(Millimeters, TW_QUANTITY_DIAMETER, TW_UNIT_LENGTH_MILLIMETER)
    N = OneDouble(Found, TW_QUANTITY_SPINDLE_SPEED, TW_UNIT_SPINDLE_SPEED_REVOLUTION_PER_MINUTE)
    If tw_spindle_speed_for_column(V, D, N, RowStatus, 4, Detail) <> TW_OK Then
        Err.Raise vbObjectError + 512 + Detail.Status, "turnwright", _
            TextOf(Detail.Field) & ": " & TextOf(Detail.Given) & " given; expected " & _
            TextOf(Detail.Expected) & "; " & TextOf(Detail.Remedy)
    End If
    SpindleSpeed = Found
End Function

' The text of a field of TwError. It is UTF-8; the words of the library are ASCII, and of what was
' given any other byte is shown as a question mark.
Public Function TextOf(ByRef Bytes() As Byte) As String
    Dim At As Long
    For At = LBound(Bytes) To UBound(Bytes)
        If Bytes(At) = 0 Then Exit For
        If Bytes(At) < 128 Then
            TextOf = TextOf & Chr$(Bytes(At))
        Else
            TextOf = TextOf & "?"
        End If
    Next At
End Function
