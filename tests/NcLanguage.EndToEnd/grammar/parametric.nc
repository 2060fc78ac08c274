; SYNTAX TEST "source.nc" "variables, expressions and the flow of control"
#101 = 5.5
; <---- variable.other.nc
;    ^ keyword.operator.assignment.nc
;      ^^^ constant.numeric.nc
#<depth> = [#101 * 2 - SIN[30]]
; <-------- variable.other.nc
;          ^ punctuation.section.expression.nc
;           ^^^^ variable.other.nc
;                ^ keyword.operator.arithmetic.nc
;                      ^^^ support.function.nc
N10 X#101 Z-#<depth> Y[#1/2]
; <--- entity.name.label.block-number.nc
;   ^ variable.parameter.axis.nc
;    ^^^^ variable.other.nc
;         ^ variable.parameter.axis.nc
;          ^ keyword.operator.arithmetic.nc
;           ^^^^^^^^ variable.other.nc
;                    ^ variable.parameter.axis.nc
;                     ^ punctuation.section.expression.nc
;                        ^ keyword.operator.arithmetic.nc
IF [#1 GT 10] GOTO 50
; <-- keyword.control.flow.nc
;      ^^ keyword.operator.word.nc
;             ^^^^ keyword.control.flow.nc
;                  ^^ entity.name.label.block-number.nc
WHILE [#1 LT 3] DO1
; <----- keyword.control.flow.nc
;               ^^ keyword.control.flow.nc
END1
; <--- keyword.control.flow.nc
o100 while [#1 lt 3]
; <---- entity.name.function.nc
;    ^^^^^ keyword.control.flow.nc
;              ^^ keyword.operator.word.nc
o<pattern> call [1] [2]
; <---------- entity.name.function.nc
;          ^^^^ keyword.control.flow.nc
G65 P9000 A1.5
; <--- keyword.control.call.nc
;   ^ variable.parameter.word.nc
;         ^ variable.parameter.axis.nc
M98 P12
; <--- keyword.control.call.nc
