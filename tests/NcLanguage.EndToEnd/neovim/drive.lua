-- Drives a headless Neovim as a person would, and writes what was seen as one JSON object. It asserts nothing: the test
-- that started it does. The job (JSON, its path in NCLANGUAGE_E2E_JOB) names the client's folder, the command, the file,
-- the places (lines and columns count from 1) and where to write the result.
local function read(path)
  local handle = assert(io.open(path, 'rb'))
  local text = handle:read('*a')
  handle:close()
  return text
end

local job = vim.fn.json_decode(read(os.getenv('NCLANGUAGE_E2E_JOB')))
local seen = {}
local limit = 20000

local function wait(what, condition)
  if not vim.wait(limit, condition, 20) then
    error(what .. ' did not come within ' .. limit / 1000 .. ' s')
  end
end

local function severe()
  return vim.diagnostic.get(0, { severity = vim.diagnostic.severity.ERROR })
end

local function at_fix()
  return vim.tbl_filter(function(d)
    return d.lnum == job.fixLine - 1 and d.col == job.fixColumn - 1
  end, vim.diagnostic.get(0))
end

local function run()
  vim.opt.runtimepath:append(job.client)
  vim.cmd('filetype plugin on')
  vim.cmd('syntax on')
  require('nclanguage').setup({ cmd = job.command })
  vim.cmd('edit ' .. vim.fn.fnameescape(job.file))
  seen.filetype = vim.bo.filetype
  seen.commentstring = vim.bo.commentstring

  wait('an error', function() return #severe() > 0 end)
  seen.errors = vim.tbl_map(function(d)
    return { line = d.lnum + 1, column = d.col + 1, message = d.message, source = d.source, code = d.code }
  end, severe())

  -- Hover, in the window it opens.
  vim.api.nvim_win_set_cursor(0, { job.hoverLine, job.hoverColumn - 1 })
  vim.lsp.buf.hover()
  local float
  wait('a hover', function()
    for _, window in ipairs(vim.api.nvim_list_wins()) do
      if vim.api.nvim_win_get_config(window).relative ~= '' then float = window end
    end
    return float
  end)
  seen.hover = table.concat(vim.api.nvim_buf_get_lines(vim.api.nvim_win_get_buf(float), 0, -1, false), '\n')
  vim.api.nvim_win_close(float, true)

  -- What could be typed in place of the cycle's code, as the client itself sorts and filters it.
  local behind = job.hoverColumn - 1 + #job.hoverWord
  local answers = vim.lsp.buf_request_sync(0, 'textDocument/completion', {
    textDocument = vim.lsp.util.make_text_document_params(),
    position = { line = job.hoverLine - 1, character = behind },
  }, limit)
  seen.completions = {}
  for _, answer in pairs(answers or {}) do
    for _, item in ipairs(vim.lsp.util.text_document_completion_list_to_complete_items(answer.result or {}, job.hoverWord)) do
      table.insert(seen.completions, item.word)
    end
  end

  -- The words of the cycle, in the window that opens.
  vim.api.nvim_win_set_cursor(0, { job.hoverLine, behind })
  vim.lsp.buf.signature_help()
  local signature
  wait('a signature', function()
    for _, window in ipairs(vim.api.nvim_list_wins()) do
      if vim.api.nvim_win_get_config(window).relative ~= '' then signature = window end
    end
    return signature
  end)
  seen.signature = table.concat(vim.api.nvim_buf_get_lines(vim.api.nvim_win_get_buf(signature), 0, -1, false), '\n')
  vim.api.nvim_win_close(signature, true)

  -- Neovim shows inlay hints from 0.10 on; the answer over its client is the same for all.
  local hints = vim.lsp.buf_request_sync(0, 'textDocument/inlayHint', {
    textDocument = vim.lsp.util.make_text_document_params(),
    range = { start = { line = 0, character = 0 }, ['end'] = { line = vim.api.nvim_buf_line_count(0), character = 0 } },
  }, limit)
  seen.hints = {}
  for _, answer in pairs(hints or {}) do
    for _, hint in ipairs(answer.result or {}) do
      local label = hint.label
      if type(label) == 'table' then
        label = table.concat(vim.tbl_map(function(part) return part.value end, label))
      end
      table.insert(seen.hints, { line = hint.position.line + 1, label = label })
    end
  end

  seen.group = vim.fn.synIDattr(vim.fn.synID(job.hoverLine, job.hoverColumn, 1), 'name')

  -- Another number for the cycle's block, and back.
  vim.api.nvim_win_set_cursor(0, { job.hoverLine, 1 })
  local unnamed = vim.b.changedtick
  vim.lsp.buf.rename('61')
  wait('the edit of the rename', function() return vim.b.changedtick ~= unnamed end)
  seen.renamed = vim.fn.getline(job.hoverLine)
  vim.cmd('silent undo')

  -- The fix, through the menu a person gets; here the choice is made by title.
  wait('the finding to fix', function() return #at_fix() > 0 end)
  local before = #vim.diagnostic.get(0)
  vim.ui.select = function(items, options, on_choice)
    seen.fixes = {}
    for index, item in ipairs(items) do
      local title = options.format_item and options.format_item(item) or tostring(item)
      table.insert(seen.fixes, title)
      if title == job.fixTitle then
        seen.chosen = index
      end
    end
    on_choice(seen.chosen and items[seen.chosen], seen.chosen)
  end
  vim.api.nvim_win_set_cursor(0, { job.fixLine, job.fixColumn - 1 })
  local tick = vim.b.changedtick
  vim.lsp.buf.code_action()
  wait('the edit of the fix', function() return vim.b.changedtick ~= tick end)
  wait('fewer findings after the fix', function() return #vim.diagnostic.get(0) < before end)
  vim.cmd('silent write')

  -- A setup file: the same server, found by the file's name.
  vim.cmd('edit ' .. vim.fn.fnameescape(job.setup))
  wait('a finding in the setup file', function() return #vim.diagnostic.get(0) > 0 end)
  seen.setup = vim.tbl_map(function(d)
    return { line = d.lnum + 1, message = d.message }
  end, vim.diagnostic.get(0))
  seen.clients = #vim.lsp.get_active_clients()
  seen.finished = true
end

local ok, problem = xpcall(run, debug.traceback)
if not ok then
  seen.failure = problem
end
local handle = assert(io.open(job.result, 'wb'))
handle:write(vim.fn.json_encode(seen))
handle:close()
-- Ends the server in order first, so that a server that does not leave shows as a hang.
vim.lsp.stop_client(vim.lsp.get_active_clients())
vim.cmd('qa!')
