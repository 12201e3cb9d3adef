// Makes a fresh clone runnable: installs the locked packages, and with --browser finds or installs a Chromium.
// Uses Node's own modules only, since it runs before any package is there. Writes to standard error only, so that
// the command line's standard output stays clean.
import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { findChromium } from './find-chromium.mjs'

const root = join(dirname(fileURLToPath(import.meta.url)), '..')
const stamp = join(root, 'node_modules', '.setup-stamp')

/** @param {string} command @param {string[]} args */
function run(command, args) {
  console.error(`> ${command} ${args.join(' ')}`)
  const result = spawnSync(command, args, { cwd: root, stdio: ['inherit', 2, 2] })
  if (result.error) throw result.error
  return result.status ?? 1
}

/** @param {string[]} args */
function npm(args) {
  const cli = process.env['npm_execpath']
  if (cli) return run(process.execPath, [cli, ...args])
  return run(process.platform === 'win32' ? 'npm.cmd' : 'npm', args)
}

function wanted() {
  const hash = createHash('sha256')
  for (const file of ['package-lock.json', '.npmrc']) hash.update(readFileSync(join(root, file)))
  return `${hash.digest('hex')} ${process.platform}-${process.arch} node${process.versions.modules}`
}

function installPackages() {
  // The command line may be called many times at once: it installs what is missing, and leaves newer to start and test.
  if (process.argv.includes('--if-missing') && existsSync(stamp)) return
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted()) return
  console.error(
    existsSync(join(root, 'node_modules')) ? 'Packages are out of date: installing.' : 'No packages yet: installing.',
  )
  // The two packages with install scripts (esbuild, fsevents) ship ready binaries, so no script needs to run.
  const status = npm(['ci', '--include=dev', '--ignore-scripts', '--no-audit', '--no-fund'])
  if (status !== 0) process.exit(status)
  writeFileSync(stamp, wanted())
}

function isDebian() {
  return existsSync('/etc/os-release') && /^ID=debian$/m.test(readFileSync('/etc/os-release', 'utf8'))
}

async function installBrowser() {
  if (findChromium()) return
  const { chromium } = await import('@playwright/test')
  if (existsSync(chromium.executablePath())) return
  console.error('No Chromium found: installing one for the end-to-end tests.')
  if (process.getuid?.() === 0 && isDebian()) {
    run('apt-get', ['update'])
    if (run('apt-get', ['install', '-y', '--no-install-recommends', 'chromium']) === 0 && findChromium()) return
  }
  const status = run(process.execPath, [join(root, 'node_modules/playwright/cli.js'), 'install', 'chromium'])
  if (status !== 0) {
    console.error('Could not install Chromium. Install Chrome or Chromium yourself, or set CHROMIUM_PATH to it.')
    process.exit(status)
  }
}

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number)
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`Node 20.19 or newer is needed; this is ${process.version}.`)
  process.exit(1)
}
installPackages()
if (process.argv.includes('--browser')) await installBrowser()
