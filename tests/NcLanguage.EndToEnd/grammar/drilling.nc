; SYNTAX TEST "source.nc" "a drilling program of the usual words"
%
; <- punctuation.section.program.nc
O0012 (TWO HOLES)
; <----- entity.name.function.program.nc
;     ^^^^^^^^^^^ comment.block.nc
N10 G21 G17 G90 G54 G94
; <--- entity.name.label.block-number.nc
;   ^^^ ^^^ ^^^ keyword.other.mode.nc
;               ^^^ keyword.other.offset.nc
;                   ^^^ keyword.other.mode.nc
n20t1m06
; <--- entity.name.label.block-number.nc
;  ^ support.class.tool.nc
;   ^ constant.numeric.tool.nc
;    ^^^ support.class.tool-change.nc
N30 S1500 M3 ; clockwise
;   ^ support.class.feed-speed.nc
;    ^^^^ constant.numeric.feed-speed.nc
;         ^^ support.class.spindle.nc
;            ^^^^^^^^^^^ comment.line.semicolon.nc
N40 G00 G43 Z50. H1 M8
;   ^^^ keyword.control.motion.rapid.nc
;       ^^^ keyword.other.compensation.nc
;           ^ variable.parameter.axis.nc
;            ^^^ constant.numeric.axis.nc
;                ^ support.class.tool.nc
;                   ^^ support.class.coolant.nc
N50 G99 G81 X-20.5 Y+.5 Z-3 R2 F120
;   ^^^ keyword.other.return-level.nc
;       ^^^ support.function.cycle.nc
;            ^^^^^ constant.numeric.axis.nc
;                   ^^^ constant.numeric.axis.nc
;                           ^ variable.parameter.word.nc
;                            ^ constant.numeric.word.nc
;                              ^ support.class.feed-speed.nc
/2 N60 G80 G4 P500
; <-- keyword.control.block-skip.nc
;  ^^^ entity.name.label.block-number.nc
;      ^^^ keyword.other.cycle.cancel.nc
;          ^^ keyword.other.dwell.nc
N70 G2 X10 Y0 I-5 J0
;   ^^ keyword.other.motion.feed.nc
;             ^ variable.parameter.arc.nc
;              ^^ constant.numeric.arc.nc
N80 G91 G28 Z0 (nc-allow machine-move-mode: home first)
;       ^^^ keyword.other.home.nc
;               ^^^^^^^^ comment.block.nc keyword.other.allow.nc
;                        ^^^^^^^^^^^^^^^^^ comment.block.nc entity.name.tag.finding.nc
N90 G54.1 P2 G43.4 G100 G59.1
;   ^^^^^ keyword.other.offset.nc
;            ^^^^^ keyword.other.preparatory.nc
;                  ^^^^ keyword.other.preparatory.nc
;                       ^^^^^ keyword.other.offset.nc
N100 M5 M9 M30 M123
;    ^^ support.class.spindle.nc
;       ^^ support.class.coolant.nc
;          ^^^ keyword.control.stop.nc
;              ^^^^ support.class.miscellaneous.nc
G 0 X 1 (open comment
; <--- keyword.control.motion.rapid.nc
;   ^ variable.parameter.axis.nc
;     ^ constant.numeric.axis.nc
;       ^^^^^^^^^^^^^ comment.block.nc
X2
; <- variable.parameter.axis.nc
