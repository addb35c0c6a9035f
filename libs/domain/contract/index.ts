export { type DeedName, DEEDS } from './deed.js';
export { DEVICE_MAY, MAY } from './permission.js';
export type { DeviceKind, Permission, Role } from './permission.js';
export { problem, REFUSALS } from './problem.js';
export type { Problem, Refusal, RefusalCode } from './problem.js';
export { route } from './route.js';
export type { Method, Route, RouteInput, RouteReply, RouteRequest } from './route.js';
export { commandKey, deviceKind, instant, role } from './field.js';
export { pin, pinOrPassword } from './pin.js';
export { device, deviceCode, done, endSession, enrolDevice, firstRun, health, language, makeDeviceCode, me, revokeDevice, sessionView, signIn, signInChoices } from './identity.js';
export type { Device, DeviceCode, Done, EnrolDevice, FirstRun, Health, Language, MakeDeviceCode, Me, RevokeDevice, SessionView, SignIn, SignInChoices } from './identity.js';
export { band, crewMember, pitSettings, place, saveCrewMember, savePit, saveYard, setup, skill, units, yardSettings } from './yard.js';
export type { Band, CrewMember, PitSettings, Place, SaveCrewMember, SavePit, SaveYard, Setup, Skill, Units, YardSettings } from './yard.js';
export { addTask, breakPlan, breakView, burning, finishTask, handover, handoverNow, onShift, personOnShift, planShift, reportBreak, reportPresence, rosterView, shiftView, signHandover, taskKind, taskView } from './shift.js';
export type { AddTask, BreakPlan, Burning, FinishTask, Handover, HandoverNow, OnShift, PersonOnShift, PlanShift, ReportBreak, ReportPresence, RosterView, ShiftView, SignHandover, TaskKind, TaskView } from './shift.js';
export { adviceAction, adviceReason, adviceView, bedGrade, checkMark, checkRecorded, checkView, dueView, fireView, pieceSize, recordCheck, splitLeft } from './check.js';
export type { AdviceAction, AdviceChoiceView, AdviceView, AirAdviceView, CheckMark, CheckRecorded, CheckView, DueView, FireView, RecordCheck } from './check.js';
export { airSet, damperSet, doorSet } from './fire-air.js';
export type { AirSetView } from './fire-air.js';
export { fireTrouble, probeEnd } from './fire-trouble.js';
export type { FireTroubleView } from './fire-trouble.js';
export { firePage, learned, setLearnedBack, skillAt, toldCheck, uncompared, unusedWhy } from './fire-page.js';
export type { FirePage, LearnedView, SetLearnedBack, SkillAt, ToldCheck } from './fire-page.js';
export {
  cartLastsView, lotRead, makePull, meterRemark, payRules, priceCook, pullLoadView, pullView, purchaseView, readLot, saveClimate, savePayRules, seasoningView, serviceCosts, trimView, woodyardView, yardLastsView,
} from './woodyard.js';
export type {
  CartLastsView, LotRead, MakePull, PayRulesView, PriceCook, PullLoadView, PullView, PurchaseView, ReadLot, SaveClimate, SavePayRules, SeasoningView, ServiceCosts, TrimView, WoodyardView, YardLastsView,
} from './woodyard.js';
export {
  burnOffcuts, buyLot, cartView, deliveryRemark, lotBought, lotSettings, lotView, measureLot, moveWood, offcutsBurned, offcutsCounted, recountLot, recountOffcuts, species, splitsTrimmed, trimSplits, woodMoved, woodView,
} from './wood.js';
export type {
  BurnOffcuts, BuyLot, CartView, LotBought, LotSettings, LotView, MeasureLot, MoveWood, OffcutsBurned, OffcutsCounted, RecountLot, RecountOffcuts, SplitsTrimmed, TrimSplits, WoodMoved, WoodView,
} from './wood.js';
export { afterPitView, askAfterPit, askCookWhatIf, cookCourse, cookWhatIf, cutSettings, findingView, foodEntryView, foodLimits, foodRecorded, foodStage, limitName, readingVerdict, recordFood, remedy, saveCut, saveFoodLimits } from './cooking.js';
export type { AfterPitView, AskAfterPit, CookCourse, CookWhatIf, CutSettings, FindingView, FoodEntry, FoodEntryView, FoodLimits, FoodStage, RecordFood, SaveCut, SaveFoodLimits } from './cooking.js';
export { cookForecast, cookSettings, cookView, cutShape, placeCook, saveCook, saveService, serviceCost, serviceSettings, speciesWish, takeOff } from './food.js';
export type { CookForecast, CookSettings, CostCause, CookView, CutShape, PitAgainst, PlaceCook, SaveCook, SaveService, ServiceCost, ServiceSettings, TakeOff } from './food.js';
export { cookHelp, cookPlanView, cookReason, cookSupposed, loadingView, moveWeighed, pitLoadingView, placingReason, setAsideCode, setAsideView, supposeCook, weighMove } from './loading.js';
export type { CookPlanView, CookSupposed, LoadingView, MoveWeighed, PitLoadingView, SetAsideView, SupposeCook, WeighMove } from './loading.js';
export { forecastView, recordWeather, weatherView } from './weather.js';
export type { ForecastView, RecordWeather, WeatherView } from './weather.js';
export { assignment, changeCause, loadHour, planCause, planBecause, planChange, planDecision, planSearch, planView, work } from './plan.js';
export type { Assignment, ChangeCause, PlanChange, PlanDecision, PlanView, Work } from './plan.js';
export { fairnessView, shareView } from './fairness.js';
export type { FairnessView, ShareView } from './fairness.js';
export { askWhatIf, askWhy, hindranceView, levelCost, pinWork, relaxation, supposition, whatIfView, whyView } from './plan-answers.js';
export type { HindranceView, LevelCost, PinWork, Relaxation, Supposition, WhatIfView, WhyView } from './plan-answers.js';
export { acknowledgeAlarm, alarmKind, alarmPriority, alarmReport, alarmState, alarmTier, alarmView, shelveAlarm } from './alarm.js';
export type { AcknowledgeAlarm, AlarmKind, AlarmReport, AlarmView } from './alarm.js';
export { LIVE } from './live.js';
export { liveBeat, liveChange, pitView, yardClock, yardState } from './state.js';
export type { LiveBeat, LiveChange, PitView, YardClock, YardState } from './state.js';
export { askRecords, correctRecord, MOST_RECORD_DAYS, RECORD_LOGS, recordLog, recordNights, recordsView } from './record.js';
export type { CorrectRecord, RecordLog, RecordsView } from './record.js';
export { findingFigures, FINDINGS, HOUSE_PARTS, houseStatus, PART_STATES, partView } from './status.js';
export type { Finding, FindingFigures, HousePart, HouseStatus, PartState, PartView } from './status.js';
export { yardEvent } from './event.js';
export type { EventKind, EventOf, YardEvent } from './event.js';
export { routes } from './routes.js';
export type { RouteName, Routes } from './routes.js';
export { openApi } from './openapi.js';
export { asideView, assignSource, calibrateProbe, MOST_READINGS, pasteReadings, probeCourses, probesView, probeView, readingsPasted, readingsRecorded, recordReadings, sentReading } from './reading.js';
export type { ProbeCourses, ProbesView, ProbeView, ReadingsPasted, ReadingsRecorded, RecordReadings, SentReading } from './reading.js';
export { calendarAddress, makeCalendarAddress, saveWebhook, webhookSaved, webhookView } from './link.js';
export type { CalendarAddress, WebhookSaved, WebhookView } from './link.js';
