;;; nc-mode.el --- NC programs: colours, and the language server by eglot  -*- lexical-binding: t -*-

;; Package-Requires: ((emacs "26.1"))
;; Whatever is known about NC programs lives in the server; the colours are in nc-words.el, which the server's executable writes.

;;; Code:

(require 'nc-words)

(defgroup nc nil
  "NC programs."
  :group 'languages)

(defcustom nc-server '("nclanguage" "serve")
  "How to start the language server: the program and its arguments."
  :type '(repeat string))

(defun nc--search (pattern)
  "A search for PATTERN that goes on behind its first group."
  (lambda (limit)
    (when (re-search-forward pattern limit t)
      (goto-char (match-end 1)))))

(defvar nc-font-lock
  (mapcar (lambda (row) (list (nc--search (car row)) 1 (cdr row))) nc-words)
  "Colours of `nc-mode'.")

;;;###autoload
(define-derived-mode nc-mode prog-mode "NC"
  "Programs of milling machines."
  (setq-local comment-start "(")
  (setq-local comment-end ")")
  (setq-local comment-start-skip "[(;][ \t]*")
  ;; By patterns alone, in either case.
  (setq-local font-lock-defaults '(nc-font-lock t t)))

;;;###autoload
(define-derived-mode nc-setup-mode js-mode "NC setup"
  "Setup and machine files: JSON that may hold comments.")

;;;###autoload
(progn
  (add-to-list 'auto-mode-alist '("\\.\\(?:nc\\|cnc\\|tap\\|iso\\|eia\\|ncp\\)\\'" . nc-mode))
  (add-to-list 'auto-mode-alist '("\\.\\(?:setup\\|machine\\|cutting\\)\\.json\\'" . nc-setup-mode)))

(defun nc--tell-all ()
  "Tell what a word does beside the words of its cycle: eglot shows one of the two."
  (when (derived-mode-p 'nc-mode)
    (setq-local eldoc-documentation-strategy #'eldoc-documentation-compose)))

(defvar eglot-server-programs)
(with-eval-after-load 'eglot
  (add-to-list 'eglot-server-programs
               (cons '(nc-mode nc-setup-mode) (lambda (&rest _) nc-server)))
  (add-hook 'eglot-managed-mode-hook #'nc--tell-all))

(provide 'nc-mode)
;;; nc-mode.el ends here
