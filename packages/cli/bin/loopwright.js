#!/usr/bin/env node
console.error('not built')
