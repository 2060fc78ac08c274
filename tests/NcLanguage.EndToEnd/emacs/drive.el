;;; drive.el --- Drives an Emacs without a window as a person would  -*- lexical-binding: t -*-

;; Writes what was seen as one JSON object; asserts nothing: the test that started it does. The job (JSON, its path in
;; NCLANGUAGE_E2E_JOB) names the settings to load, the files, the places (lines and columns count from 1) and where to write.

(require 'json)
(require 'seq)
;; With a window, Emacs does this by itself.
(package-activate-all)

(defvar job (let ((json-object-type 'alist) (json-array-type 'list)) (json-read-file (getenv "NCLANGUAGE_E2E_JOB"))))
(defvar seen nil)
(defvar limit 60)

(defun job (name) (alist-get name job))
(defun see (name value) (push (cons name value) seen))

(defun wait-for (what condition)
  "Wait until CONDITION gives a value, and give it; WHAT names it where it does not come."
  (let ((end (+ (float-time) limit)) value)
    (while (and (not (setq value (funcall condition))) (< (float-time) end))
      (accept-process-output nil 0.05)
      (run-hooks 'post-command-hook))
    (or value (error "%s did not come within %s s" what limit))))

(defun go-to (line column)
  (goto-char (point-min))
  (forward-line (1- line))
  (forward-char (1- column)))

(defun findings ()
  (mapcar (lambda (found)
            `((line . ,(line-number-at-pos (flymake-diagnostic-beg found)))
              (message . ,(flymake-diagnostic-text found))))
          (flymake-diagnostics)))

(defun open (file)
  (find-file file)
  (run-hooks 'post-command-hook)
  (wait-for "the server" #'eglot-managed-p)
  (flymake-start)
  (wait-for "a finding" #'flymake-diagnostics)
  ;; One message may bring some of them and the next all.
  (sit-for 1))

(defun face-at (line column)
  (go-to line column)
  (format "%s" (get-text-property (point) 'face)))

(defun drive ()
  (load (job 'settings) nil t)
  (open (job 'file))
  (see 'mode (symbol-name major-mode))
  (see 'findings (vconcat (findings)))
  (font-lock-ensure)
  (see 'faces (vconcat (mapcar (lambda (place) (face-at (car place) (cadr place))) (job 'coloured))))

  (go-to (job 'hoverLine) (job 'hoverColumn))
  (let ((answer (jsonrpc-request (eglot-current-server) :textDocument/hover (eglot--TextDocumentPositionParams))))
    (see 'hover (plist-get (plist-get answer :contents) :value)))
  ;; How Emacs chooses among those that have something to tell of a place; without a window it tells nothing by itself.
  (see 'tells (symbol-name eldoc-documentation-strategy))

  (go-to (job 'completeLine) (job 'completeColumn))
  (let* ((capf (run-hook-wrapped 'completion-at-point-functions #'completion--capf-wrapper 'all)))
    (see 'completions (vconcat (all-completions "" (nth 3 capf)))))

  ;; The fix, through the command a person gives; the choice is made by title.
  (go-to (job 'fixLine) (job 'fixColumn))
  (cl-letf (((symbol-function 'completing-read)
             (lambda (_prompt titles &rest _)
               (see 'fixes (vconcat (mapcar (lambda (title) (if (consp title) (car title) title)) titles)))
               (job 'fixTitle))))
    (let ((before (buffer-string))
          ;; As if by a key: a mouse would open a menu.
          (last-nonmenu-event ?a))
      (eglot-code-actions (point) (1+ (point)) nil t)
      (wait-for "the edit of the fix" (lambda () (not (equal before (buffer-string)))))))
  (save-buffer)

  ;; A block number gets another, with the jump that names it.
  (open (job 'jumps))
  (go-to (job 'renameLine) (job 'renameColumn))
  (eglot-rename (job 'renameTo))
  (see 'renamed (buffer-string))
  (set-buffer-modified-p nil)

  (open (job 'setup))
  (see 'setup (vconcat (findings)))
  (see 'setupMode (symbol-name major-mode))
  (see 'finished t))

(condition-case problem
    (drive)
  (error (see 'failure (format "%S" problem))))
(with-temp-file (job 'result) (insert (json-encode seen)))
(ignore-errors (eglot-shutdown-all))
(kill-emacs 0)
