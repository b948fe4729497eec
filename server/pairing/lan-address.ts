import { BlockList, isIP } from 'node:net';

const PRIVATE = new BlockList();
// RFC 1918; RFC 3927 link-local; RFC 1122 loopback (to try it out on one computer); RFC 4193 and RFC 4291 for IPv6.
for (const [net, bits] of [
  ['10.0.0.0', 8],
  ['172.16.0.0', 12],
  ['192.168.0.0', 16],
  ['169.254.0.0', 16],
  ['127.0.0.0', 8],
] as const)
  PRIVATE.addSubnet(net, bits, 'ipv4');
PRIVATE.addSubnet('fc00::', 7, 'ipv6');

interface Interface {
  readonly address: string;
  readonly family: string;
  readonly internal: boolean;
}

/**
 * The address phones reach the bench at: the one wanted, or the first private IPv4 of this computer.
 * @param interfaces as `os.networkInterfaces()` answers
 * @returns the address, or a sentence that says why there is none
 */
export function lanAddress(
  wanted: string | undefined,
  interfaces: Readonly<Record<string, readonly Interface[] | undefined>>,
): { readonly address: string } | { readonly refusal: string } {
  const own = Object.values(interfaces)
    .flatMap((list) => list ?? [])
    .filter((i) => !i.internal);
  const choices = own.filter((i) => isPrivate(i.address)).map((i) => i.address);
  const listed =
    choices.length > 0 ? `this computer has ${choices.join(', ')}` : 'this computer has none now';
  if (wanted === undefined) {
    const first = own.find((i) => i.family === 'IPv4' && isPrivate(i.address));
    if (first) return { address: first.address };
    return {
      refusal: `No private IPv4 address was found to pair a phone at (${listed}); join your own network, or name an address with --pair-host.`,
    };
  }
  if (isIP(wanted) === 0 || !isPrivate(wanted)) {
    return {
      refusal: `"${wanted}" is not an address of a private network; --pair-host takes one of this computer's own addresses there (${listed}).`,
    };
  }
  return { address: wanted };
}

function isPrivate(address: string): boolean {
  const family = isIP(address);
  return family !== 0 && PRIVATE.check(address, family === 6 ? 'ipv6' : 'ipv4');
}
