/** A server of one's own that speaks encrypted alone, by a certificate that nobody else knows. */
import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { freePort, type RedisServer, redisServer } from './redisServer.ts'

export interface EncryptedServer extends Pick<RedisServer, 'port' | 'stop'> {
  /** file of who vouches for it: itself */
  readonly certificate: string
}

/** @param more  further words of its command line */
export async function encryptedServer(more: readonly string[]): Promise<EncryptedServer> {
  const folder = mkdtempSync(join(tmpdir(), 'certificate '))
  const [key, certificate] = [join(folder, 'key.pem'), join(folder, 'certificate.pem')]
  const made = 'req -x509 -newkey ec -pkeyopt ec_paramgen_curve:prime256v1 -nodes -days 2 -subj /CN=localhost'
  execFileSync('openssl', [...made.split(' '), '-addext', 'subjectAltName=DNS:localhost', '-keyout', key, '-out', certificate], {
    stdio: 'ignore',
  })
  const encrypted = ['--tls-port', String(await freePort()), '--tls-cert-file', certificate, '--tls-key-file', key]
  const server = await redisServer(['--port', '0', ...encrypted, '--tls-auth-clients', 'no', ...more])
  const stop = async (): Promise<void> => {
    await server.stop()
    rmSync(folder, { recursive: true, force: true })
  }
  return { certificate, port: server.port, stop }
}
