" Written by `nclanguage grammar vim` from the table of codes: change that, not this.
if exists('b:current_syntax')
  finish
endif
syntax case ignore

syntax match ncOperator /\*\*\|[-+*\/=]/
syntax match ncNumber /\%(\d\+\.\=\d*\|\.\d\+\)/
syntax match ncNumber /\%(\a\s*\)\@<=[-+]\%(\d\+\.\=\d*\|\.\d\+\)/
syntax match ncVariable /#\s*\%(\d\+\|<[^>]*>\)\=/
syntax match ncAxis /[ABCUVWXYZ]\%(\s*[-+.#[[:digit:]]\)\@=/
syntax match ncArc /[IJK]\%(\s*[-+.#[[:digit:]]\)\@=/
syntax match ncFeedSpeed /[FS]\%(\s*[-+.#[[:digit:]]\)\@=/
syntax match ncTool /[DHT]\%(\s*[-+.#[[:digit:]]\)\@=/
syntax match ncParameter /[ELPQR]\%(\s*[-+.#[[:digit:]]\)\@=/
syntax match ncMiscellaneous /M\s*\%(\d\+\%(\.\d*\)\=\|[-+#[]\@=\)/
syntax match ncPreparatory /G\s*\%(\d\+\%(\.\d*\)\=\|[-+#[]\@=\)/
syntax match ncToolChange /M\s*0*\%(6\)[0-9.]\@!/
syntax match ncCoolant /M\s*0*\%(7\|8\|9\)[0-9.]\@!/
syntax match ncSpindle /M\s*0*\%(3\|4\|5\|19\)[0-9.]\@!/
syntax match ncStop /M\s*0*\%(0\|1\|2\|30\|60\)[0-9.]\@!/
syntax match ncCall /G\s*0*\%(65\)[0-9.]\@!/
syntax match ncCall /M\s*0*\%(98\|99\)[0-9.]\@!/
syntax match ncHome /G\s*0*\%(28\|30\)[0-9.]\@!/
syntax match ncOffset /G\s*0*\%(10\|15\|16\|50\|50\.1\|51\|51\.1\|52\|53\|54\|54\.1\|55\|56\|57\|58\|59\|59\.1\|59\.2\|59\.3\|68\|69\|92\|92\.1\|92\.2\|92\.3\)[0-9.]\@!/
syntax match ncCompensation /G\s*0*\%(40\|41\|42\|43\|44\|49\)[0-9.]\@!/
syntax match ncReturnLevel /G\s*0*\%(98\|99\)[0-9.]\@!/
syntax match ncMode /G\s*0*\%(9\|17\|18\|19\|20\|21\|60\|61\|61\.1\|62\|64\|70\|71\|90\|91\|93\|94\|95\|96\|97\)[0-9.]\@!/
syntax match ncCycleEnd /G\s*0*\%(80\)[0-9.]\@!/
syntax match ncCycle /G\s*0*\%(73\|74\|76\|81\|82\|83\|84\|85\|86\|87\|88\|89\)[0-9.]\@!/
syntax match ncDwell /G\s*0*\%(4\)[0-9.]\@!/
syntax match ncCut /G\s*0*\%(1\|2\|3\|31\|33\|38\.2\|38\.3\|38\.4\|38\.5\)[0-9.]\@!/
syntax match ncRapid /G\s*0*\%(0\)[0-9.]\@!/
syntax match ncFunction /\a\@<!\%(ABS\|ACOS\|ASIN\|ATAN\|COS\|EXP\|FIX\|FUP\|LN\|ROUND\|SIN\|SQRT\|TAN\)\a\@!/
syntax match ncWordOperator /\a\@<!\%(MOD\|AND\|OR\|XOR\|EQ\|NE\|GT\|GE\|LT\|LE\)\a\@!/
syntax match ncFlow /\a\@<!\%(IF\|THEN\|GOTO\|WHILE\|DO\|END\|SUB\|ENDSUB\|RETURN\|CALL\|ELSEIF\|ELSE\|ENDIF\|ENDWHILE\|REPEAT\|ENDREPEAT\|BREAK\|CONTINUE\)\a\@!/
syntax match ncBlockNumber /\a\@<!N\s*\d\+/
syntax match ncBlockNumber /\%(GOTO\s*\)\@<=\d\+/
syntax match ncProgram /\a\@<![O:]\s*\%(\d\+\|<[^>]*>\)/
syntax match ncSkip /^\s*\/\d\=/
syntax match ncMark /^\s*%.*$/
syntax match ncAllow /\%((\s*\)\@<=nc-allow\s\+[[:alnum:]-]\+/ contained
syntax match ncComment /([^)]*\%()\|$\)/ contains=ncAllow,@Spell
syntax match ncComment /;.*$/ contains=@Spell

highlight default link ncOperator Operator
highlight default link ncNumber Number
highlight default link ncVariable Identifier
highlight default link ncAxis Identifier
highlight default link ncArc Identifier
highlight default link ncFeedSpeed Type
highlight default link ncTool Type
highlight default link ncParameter Identifier
highlight default link ncMiscellaneous Type
highlight default link ncPreparatory Statement
highlight default link ncToolChange Type
highlight default link ncCoolant Type
highlight default link ncSpindle Type
highlight default link ncStop Exception
highlight default link ncCall Exception
highlight default link ncHome Statement
highlight default link ncOffset Statement
highlight default link ncCompensation Statement
highlight default link ncReturnLevel Statement
highlight default link ncMode PreProc
highlight default link ncCycleEnd Statement
highlight default link ncCycle Function
highlight default link ncDwell Statement
highlight default link ncCut Statement
highlight default link ncRapid Special
highlight default link ncFunction Function
highlight default link ncWordOperator Operator
highlight default link ncFlow Conditional
highlight default link ncBlockNumber Label
highlight default link ncProgram Function
highlight default link ncSkip Special
highlight default link ncMark Special
highlight default link ncAllow SpecialComment
highlight default link ncComment Comment

let b:current_syntax = 'nc'
