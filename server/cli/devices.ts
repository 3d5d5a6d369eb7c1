/** `quidnote devices`: who was let in on the local network, and taking one off the list. */
import { openDevices } from '../lan/index.ts';
import { exits, json, line, tell, type Exit } from './out.ts';

export function devicesCommand(dataDir: string, [what, id]: readonly string[], asJson: boolean): Exit {
  const devices = openDevices(dataDir);
  if (what === 'revoke' && id !== undefined) {
    const gone = devices.revoke(id);
    tell(gone ? 'It is off the list, and out within two seconds if it was in.' : 'There is no such device. Nothing was changed.');
    return gone ? exits.ok : exits.failed;
  }
  if (what !== undefined) {
    tell('devices stands alone, or: devices revoke ID. See quidnote --help.');
    return exits.usage;
  }
  const list = devices.list();
  for (const { id: one, name, pairedAt } of list) {
    if (asJson) json({ id: one, name, pairedAt });
    else line(`${one}  ${pairedAt.slice(0, 16).replace('T', ' ')}  ${name}`);
  }
  if (list.length === 0) tell('No device was let in.');
  return exits.ok;
}
