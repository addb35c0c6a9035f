import { Injectable } from '@nestjs/common';
import { collectDefaultMetrics, Gauge, Registry } from 'prom-client';
import { DataSource } from 'typeorm';

/** What Prometheus reads of a house: its process, and what its records say at this moment. */
@Injectable()
export class Metrics {
  private readonly registry = new Registry();

  constructor(private readonly database: DataSource) {
    collectDefaultMetrics({ register: this.registry });
    this.gauge('stokehold_alarms', 'Alarms that stand, by kind and state', ['kind', 'state'], `select kind, state, count(*)::int as value from alarm where state <> 'normal' group by kind, state`);
    this.gauge('stokehold_probes', 'Probes by the quality of their last reading', ['quality'], `select (array['good', 'suspect', 'bad'])[quality + 1] as quality, count(*)::int as value from probe_signal group by 1`);
    this.gauge('stokehold_readings_last_10_minutes', 'Readings that arrived in the last ten minutes', [], `select count(*)::int as value from reading where arrived_at > now() - interval '10 minutes' and device_taken_at > now() - interval '1 day'`);
    this.gauge('stokehold_readings_aside', 'Readings kept aside, by why', ['why'], 'select why, count(*)::int as value from reading_aside group by why');
    this.gauge('stokehold_outbox_waiting', 'Facts that wait to be carried', [], 'select count(*)::int as value from outbox where done_at is null');
    this.gauge('stokehold_links_waiting', 'Messages to the outside that were not taken yet', [], `select count(*)::int as value from link_message where webhook_at is null and broker_at is null and at > now() - interval '1 day'`);
  }

  /** The text that Prometheus reads, and its media type. */
  async read(): Promise<{ readonly text: string; readonly type: string }> {
    return { text: await this.registry.metrics(), type: this.registry.contentType };
  }

  private gauge(name: string, help: string, labelNames: readonly string[], sql: string): void {
    const { database } = this;
    new Gauge({
      name, help, labelNames, registers: [this.registry],
      async collect() {
        const rows = (await database.query(sql)) as ({ value: number } & Record<string, string | number>)[];
        this.reset();
        for (const { value, ...labels } of rows) this.set(labels, value);
      },
    });
  }
}
