-- Starts the language server for NC programs. Whatever is known about NC programs lives in the server.
-- Serves Neovim 0.7 to 0.10 (vim.lsp.start_client) and 0.11 and later (vim.lsp.config, vim.lsp.enable).
local M = {}

-- A job's folder is the one that holds its setup or machine file.
local markers = { 'nc.setup.json', 'nc.machine.json', '.git' }

--- The running client of each root folder, for the versions that do not keep this themselves.
local clients = {}

local function root_of(file)
  local folder = vim.fn.fnamemodify(file, ':p:h')
  local up = folder
  while true do
    for _, marker in ipairs(markers) do
      if vim.loop.fs_stat(up .. '/' .. marker) then
        return up
      end
    end
    local parent = vim.fn.fnamemodify(up, ':h')
    if parent == up then
      return folder
    end
    up = parent
  end
end

--- Programs by their type, setup and machine files by their name: no other file is the server's business.
local types = { 'nc', 'json', 'jsonc' }

local function is_ours(buffer)
  local file = vim.api.nvim_buf_get_name(buffer)
  if file == '' or vim.bo[buffer].buftype ~= '' then
    return false
  end
  local kind = file:match('%.(%a+)%.json$')
  return vim.bo[buffer].filetype == 'nc' or kind == 'setup' or kind == 'machine' or kind == 'cutting'
end

local function attach(options, buffer)
  local file = vim.api.nvim_buf_get_name(buffer)
  if not is_ours(buffer) then
    return
  end
  local root = root_of(file)
  if not clients[root] then
    local config = vim.tbl_extend('force', options, {
      root_dir = root,
      workspace_folders = { { uri = vim.uri_from_fname(root), name = root } },
      on_exit = function()
        clients[root] = nil
      end,
    })
    clients[root] = vim.lsp.start_client(config)
  end
  if clients[root] then
    vim.lsp.buf_attach_client(buffer, clients[root])
  end
end

--- Call once, from init.lua.
--- @param options table|nil  cmd: the command, default { 'nclanguage', 'serve' }; on_attach, capabilities, handlers as
---                           Neovim's client takes them
function M.setup(options)
  options = vim.tbl_extend('keep', options or {}, { name = 'nclanguage', cmd = { 'nclanguage', 'serve' } })
  if vim.fn.executable(options.cmd[1]) == 0 then
    vim.notify(
      'nclanguage: "' .. options.cmd[1] .. '" was not found; install it or give its path: '
        .. "require('nclanguage').setup { cmd = { '/path/to/nclanguage', 'serve' } }",
      vim.log.levels.ERROR
    )
    return
  end

  if vim.lsp.enable then
    vim.lsp.config('nclanguage', vim.tbl_extend('force', options, {
      filetypes = types,
      root_dir = function(buffer, start)
        if is_ours(buffer) then
          start(root_of(vim.api.nvim_buf_get_name(buffer)))
        end
      end,
    }))
    vim.lsp.enable('nclanguage')
    return
  end

  local group = vim.api.nvim_create_augroup('nclanguage', { clear = true })
  vim.api.nvim_create_autocmd('FileType', {
    group = group,
    pattern = types,
    callback = function(event)
      attach(options, event.buf)
    end,
  })
  -- Buffers that were open before.
  for _, buffer in ipairs(vim.api.nvim_list_bufs()) do
    if vim.api.nvim_buf_is_loaded(buffer) then
      attach(options, buffer)
    end
  end
end

return M
