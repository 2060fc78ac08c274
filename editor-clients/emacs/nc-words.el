;;; nc-words.el --- Colours of NC programs  -*- lexical-binding: t -*-

;; Written by `nclanguage grammar emacs` from the table of codes: change that, not this.

;;; Code:

(defconst nc-words
  '(("\\(([^)\n]*\\(?:)\\|$\\)\\)" . font-lock-comment-face)
    ("\\(;.*\\)$" . font-lock-comment-face)
    ("^[ \t]*\\(%.*\\)$" . font-lock-preprocessor-face)
    ("^[ \t]*\\(/[0-9]?\\)" . font-lock-preprocessor-face)
    ("\\(?:^\\|[^A-Z]\\)\\([O:][ \t]*\\(?:[0-9]+\\|<[^>\n]*>\\)\\)" . font-lock-function-name-face)
    ("\\(?:^\\|[^A-Z#<]\\)\\(N[ \t]*[0-9]+\\)" . font-lock-constant-face)
    ("GOTO[ \t]*\\([0-9]+\\)" . font-lock-constant-face)
    ("\\(#[ \t]*\\(?:[0-9]+\\|<[^>\n]*>\\)?\\)" . font-lock-variable-name-face)
    ("\\(?:^\\|[^A-Z]\\)\\(ENDREPEAT\\|ENDWHILE\\|CONTINUE\\|ENDSUB\\|RETURN\\|ELSEIF\\|REPEAT\\|WHILE\\|ENDIF\\|BREAK\\|THEN\\|GOTO\\|CALL\\|ELSE\\|END\\|SUB\\|IF\\|DO\\)\\(?:[^A-Z]\\|$\\)" . font-lock-keyword-face)
    ("\\(?:^\\|[^A-Z]\\)\\(MOD\\|AND\\|XOR\\|OR\\|EQ\\|NE\\|GT\\|GE\\|LT\\|LE\\)\\(?:[^A-Z]\\|$\\)" . font-lock-builtin-face)
    ("\\(?:^\\|[^A-Z]\\)\\(ROUND\\|ACOS\\|ASIN\\|ATAN\\|SQRT\\|ABS\\|COS\\|EXP\\|FIX\\|FUP\\|SIN\\|TAN\\|LN\\)\\(?:[^A-Z]\\|$\\)" . font-lock-function-name-face)
    ("\\(G[ \t]*0*\\(?:0\\)\\)\\(?:[^0-9.]\\|$\\)" . font-lock-builtin-face)
    ("\\(G[ \t]*0*\\(?:1\\|2\\|3\\|31\\|33\\|38\\.2\\|38\\.3\\|38\\.4\\|38\\.5\\)\\)\\(?:[^0-9.]\\|$\\)" . font-lock-keyword-face)
    ("\\(G[ \t]*0*\\(?:4\\)\\)\\(?:[^0-9.]\\|$\\)" . font-lock-keyword-face)
    ("\\(G[ \t]*0*\\(?:73\\|74\\|76\\|81\\|82\\|83\\|84\\|85\\|86\\|87\\|88\\|89\\)\\)\\(?:[^0-9.]\\|$\\)" . font-lock-function-name-face)
    ("\\(G[ \t]*0*\\(?:80\\)\\)\\(?:[^0-9.]\\|$\\)" . font-lock-keyword-face)
    ("\\(G[ \t]*0*\\(?:9\\|17\\|18\\|19\\|20\\|21\\|60\\|61\\|61\\.1\\|62\\|64\\|70\\|71\\|90\\|91\\|93\\|94\\|95\\|96\\|97\\)\\)\\(?:[^0-9.]\\|$\\)" . font-lock-preprocessor-face)
    ("\\(G[ \t]*0*\\(?:98\\|99\\)\\)\\(?:[^0-9.]\\|$\\)" . font-lock-keyword-face)
    ("\\(G[ \t]*0*\\(?:40\\|41\\|42\\|43\\|44\\|49\\)\\)\\(?:[^0-9.]\\|$\\)" . font-lock-keyword-face)
    ("\\(G[ \t]*0*\\(?:10\\|15\\|16\\|50\\|50\\.1\\|51\\|51\\.1\\|52\\|53\\|54\\|54\\.1\\|55\\|56\\|57\\|58\\|59\\|59\\.1\\|59\\.2\\|59\\.3\\|68\\|69\\|92\\|92\\.1\\|92\\.2\\|92\\.3\\)\\)\\(?:[^0-9.]\\|$\\)" . font-lock-keyword-face)
    ("\\(G[ \t]*0*\\(?:28\\|30\\)\\)\\(?:[^0-9.]\\|$\\)" . font-lock-keyword-face)
    ("\\(G[ \t]*0*\\(?:65\\)\\)\\(?:[^0-9.]\\|$\\)" . font-lock-keyword-face)
    ("\\(M[ \t]*0*\\(?:98\\|99\\)\\)\\(?:[^0-9.]\\|$\\)" . font-lock-keyword-face)
    ("\\(M[ \t]*0*\\(?:0\\|1\\|2\\|30\\|60\\)\\)\\(?:[^0-9.]\\|$\\)" . font-lock-keyword-face)
    ("\\(M[ \t]*0*\\(?:3\\|4\\|5\\|19\\)\\)\\(?:[^0-9.]\\|$\\)" . font-lock-type-face)
    ("\\(M[ \t]*0*\\(?:7\\|8\\|9\\)\\)\\(?:[^0-9.]\\|$\\)" . font-lock-type-face)
    ("\\(M[ \t]*0*\\(?:6\\)\\)\\(?:[^0-9.]\\|$\\)" . font-lock-type-face)
    ("\\(G[ \t]*[0-9]+\\(?:\\.[0-9]*\\)?\\)" . font-lock-keyword-face)
    ("\\(M[ \t]*[0-9]+\\(?:\\.[0-9]*\\)?\\)" . font-lock-type-face)
    ("\\([ABCUVWXYZ]\\)[ \t]*[-+.#[0-9]" . font-lock-variable-name-face)
    ("\\([IJK]\\)[ \t]*[-+.#[0-9]" . font-lock-variable-name-face)
    ("\\([FS]\\)[ \t]*[-+.#[0-9]" . font-lock-type-face)
    ("\\([DHT]\\)[ \t]*[-+.#[0-9]" . font-lock-type-face)
    ("\\([ELPQR]\\)[ \t]*[-+.#[0-9]" . font-lock-variable-name-face)
    ("\\([0-9]+\\.?[0-9]*\\|\\.[0-9]+\\)" . font-lock-constant-face))
  "Patterns of an NC program, each with the face of its first group.")

(provide 'nc-words)
;;; nc-words.el ends here
