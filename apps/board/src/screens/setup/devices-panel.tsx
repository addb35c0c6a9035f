import { useQueryClient } from '@tanstack/react-query';
import { deviceKind, type Device, type DeviceCode, type DeviceKind } from '@stokehold/domain/contract';
import { useState } from 'react';
import { useClock } from '../../live/use-clock.js';
import { useCommand } from '../../live/use-command.js';
import { useMe } from '../../live/use-me.js';
import { Button } from '../../parts/button.js';
import { Choice } from '../../parts/choice.js';
import { Failure } from '../../parts/failure.js';
import { Form, Panel } from '../../parts/panel.js';
import { useFigures } from '../../units/use-figures.js';
import { useSetupWords } from '../../words/setup.js';
import { useSharedWords } from '../../words/shared.js';
import css from './setup.module.css';
import { DEVICES, useDevices } from './use-devices.js';

/** The wall, phones and gateways that may talk to this yard; a new one comes in with a one-time code. */
export function DevicesPanel() {
  const say = useSetupWords();
  const shown = [...(useDevices() ?? [])].sort((a, b) => Number(a.revokedAt !== null) - Number(b.revokedAt !== null) || a.name.localeCompare(b.name));
  return (
    <div className={css['pair']}>
      <NewDevice />
      <Panel title={say('devices.title')}>
        <ul className={css['rows']}>
          {shown.map((device) => (
            <DeviceRow key={device.id} device={device} />
          ))}
        </ul>
      </Panel>
    </div>
  );
}

function NewDevice() {
  const say = useSetupWords();
  const shared = useSharedWords();
  const command = useCommand('makeDeviceCode');
  const [kind, setKind] = useState<DeviceKind>('hand');
  const [code, setCode] = useState<DeviceCode>();
  const make = async () => {
    const made = await command.send({ kind });
    if (made) setCode(made);
  };
  return (
    <Panel title={say('devices.add')}>
      <Form onSend={() => void make()} sending={command.sending} failed={command.failed} does={say('devices.make')}>
        <Choice label={say('devices.kind')} columns={1} value={kind} onChoose={setKind} options={deviceKind.options.map((value) => ({ value, label: shared(`device.${value}`) }))} />
      </Form>
      {code && <Code code={code} />}
      {!isSecureContext && <p className={css['soon']}>▲ {say('devices.plain')}</p>}
    </Panel>
  );
}

function Code({ code }: { readonly code: DeviceCode }) {
  const say = useSetupWords();
  const shared = useSharedWords();
  const figures = useFigures();
  useClock();
  // Codes run by the real clock, also on a practice night.
  const leftS = (Date.parse(code.expiresAt) - Date.now()) / 1000;
  return (
    <div className={css['code']} role="status">
      <p>{shared(`device.${code.kind}`)}</p>
      <p className={css['digits']}>{code.code}</p>
      <ol>
        <li>{say('devices.step1', { address: `${location.origin}/enrol` })}</li>
        <li>{say('devices.step2')}</li>
        <li>{say(code.kind === 'wall' ? 'devices.step3wall' : code.kind === 'hand' ? 'devices.step3hand' : 'devices.step3gateway')}</li>
      </ol>
      <p>{leftS > 0 ? say('devices.expires', { time: figures.time(code.expiresAt), span: figures.span(leftS) }) : <strong className={css['soon']}>▲ {say('devices.expired')}</strong>}</p>
    </div>
  );
}

function DeviceRow({ device }: { readonly device: Device }) {
  const say = useSetupWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const client = useQueryClient();
  const { me } = useMe();
  const command = useCommand('revokeDevice');
  const [sure, setSure] = useState(false);
  const mine = me?.device.id === device.id;
  const end = async () => {
    if (await command.send({ deviceId: device.id })) await client.invalidateQueries({ queryKey: DEVICES });
  };
  return (
    <li className={device.revokedAt ? css['quiet'] : undefined}>
      <span>
        <strong className={css['big']}>{device.name}</strong> {shared(`device.${device.kind}`)}
        <br />
        <span className={css['quiet']}>
          {device.revokedAt ? say('devices.ended', { day: figures.day(device.revokedAt) }) : device.lastSeenAt ? say('devices.seen', { day: figures.day(device.lastSeenAt), time: figures.time(device.lastSeenAt) }) : say('devices.neverSeen')}
          {mine && ` · ${say('devices.mine')}`}
        </span>
        <Failure of={command.failed} />
      </span>
      {!device.revokedAt && !mine && (
        sure ? (
          <span className={css['line']}>
            <Button disabled={command.sending} onClick={() => void end()}>{say('devices.endSure', { name: device.name })}</Button>
            <Button look="bare" onClick={() => setSure(false)}>{shared('do.cancel')}</Button>
          </span>
        ) : (
          <Button onClick={() => setSure(true)} aria-label={say('devices.endOf', { name: device.name })}>{say('devices.end')}</Button>
        )
      )}
    </li>
  );
}
